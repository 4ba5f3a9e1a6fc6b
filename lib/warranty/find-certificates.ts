import { soughtFrom } from '@/lib/jobs/rules/sought';
import { certificatesOfSerial } from './records';

/**
 * Numbers of the certificates that a text names: one by its own number, in any spelling or as a code, or those in force for a
 * serial, newest first. Empty where it is neither; whether a number is one of ours is seen when it is read.
 */
export async function findCertificates(typed: string): Promise<string[]> {
  const sought = soughtFrom(typed);
  switch (sought.kind) {
    case 'nothing':
      return [];
    case 'number':
      return sought.of === 'W' ? [sought.number] : [];
    case 'text': {
      const found = sought.key === '' ? [] : await certificatesOfSerial([sought.key]);
      return found.map(({ number }) => number);
    }
  }
}
