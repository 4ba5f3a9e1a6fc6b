import { day } from '@/lib/calendar/day';
import type { History } from '../history';
import { ENGLAND, someLine, someTerms } from '../made';

/**
 * A groove box with a worn label. The certificate says OGB8-0081-5. Typed with letters O for zeros, or S for 5, it may be
 * the same label misread, and a person looks at a photo; with small letters and spaces it is the same; with two characters
 * wrong that do not look alike it is another unit.
 */
export const oneLetter: History = {
  title: 'A worn serial label',
  unit: 'Osprey GB-8 groove box',
  serial: 'OGB8-0081-5',
  zone: 'Europe/London',
  calendar: ENGLAND,
  terms: someTerms(),
  lines: [
    someLine({
      id: 'encoder',
      description: 'Tempo encoder replaced',
      symptoms: ['tempo jumps'],
      startsOn: day('2026-05-04'),
    }),
  ],
  rows: [
    {
      on: '2026-08-01',
      does: 'asks',
      symptom: 'tempo jumps',
      serial: 'OGB8-OO81-5',
      follows: { answer: 'confirm-serial', step: 'send-serial-photo', reasons: ['serial-close'] },
    },
    {
      on: '2026-08-01',
      does: 'asks',
      symptom: 'tempo jumps',
      serial: 'OGB8-0081-S',
      follows: { answer: 'confirm-serial', step: 'send-serial-photo', reasons: ['serial-close'] },
    },
    {
      on: '2026-08-01',
      does: 'asks',
      symptom: 'tempo jumps',
      serial: 'ogb8 0081 5',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'line-covers'],
      },
    },
    {
      on: '2026-08-01',
      does: 'asks',
      symptom: 'tempo jumps',
      serial: 'OGB8-0074-5',
      follows: { answer: 'other-unit', step: 'check-serial', reasons: ['serial-differs'] },
    },
    {
      on: '2026-08-01',
      does: 'asks',
      symptom: 'tempo jumps',
      copy: 'changed',
      follows: { answer: 'not-recognised', step: null, reasons: ['signature-fails'] },
    },
    {
      on: '2026-08-01',
      does: 'asks',
      symptom: 'tempo jumps',
      copy: 'unknown',
      follows: { answer: 'not-recognised', step: null, reasons: ['number-unknown'] },
    },
    {
      // Long after the end (4 May 2027) a misread serial is still a question about the serial first.
      on: '2028-08-01',
      does: 'asks',
      symptom: 'tempo jumps',
      serial: 'OGB8-OO81-5',
      follows: { answer: 'confirm-serial', step: 'send-serial-photo', reasons: ['serial-close'] },
    },
  ],
};
