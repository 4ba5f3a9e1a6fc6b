import { soughtFrom } from '@/lib/jobs/rules/sought';
import { explainReading, readNumber } from '@/lib/numbers/job-number';
import { foldSerial } from '@/lib/numbers/serial';

export type LostNumber = { ok: true; number: string | null } | { ok: false; sentence: string };

/**
 * Reads what someone who lost a certificate or a private link still has: its number, the job's or the claim's, typed or
 * scanned, or the serial alone.
 * Looks at the characters only and never at records, so that a refusal tells nothing about what there is.
 *
 * readLostNumber('j-4k7q-x290', '') -> { ok: true, number: 'J4K7QX290' }; ('', 'HW2-10480-K') -> { ok: true, number: null }
 */
export function readLostNumber(typed: string, serial: string): LostNumber {
  const sought = soughtFrom(typed);
  switch (sought.kind) {
    case 'nothing':
      return foldSerial(serial) === ''
        ? {
            ok: false,
            sentence: 'Enter the number of the certificate, job or claim, or the serial number below',
          }
        : { ok: true, number: null };
    case 'number':
      return sought.of !== 'Q'
        ? { ok: true, number: sought.number }
        : {
            ok: false,
            sentence:
              'This is the number of a quote. Its private link is in our e-mail; write to us if you have lost that.',
          };
    case 'text': {
      const reading = readNumber(typed);
      return { ok: false, sentence: explainReading(reading.ok ? 'kind' : reading.reason) };
    }
  }
}
