import { day } from '@/lib/calendar/day';
import type { History } from '../history';
import { ENGLAND, someLine, someTerms } from '../made';

const covered = ['serial-same', 'last-day-moved'] as const;

/**
 * An effect pedal whose cover ends on Boxing Day. Twelve months from 26 December 2025 end on Saturday 26 December 2026. In
 * England Monday the 28th is Boxing Day's substitute, so the last day for a claim is Tuesday the 29th; seven days of grace
 * from there end on 5 January 2027. Cover itself is not rolled.
 */
export const boxingDay: History = {
  title: 'An end on Boxing Day',
  unit: 'Tern Overdrive 3 effect pedal',
  serial: 'TN3-00815',
  zone: 'Europe/London',
  calendar: ENGLAND,
  terms: someTerms({ graceDays: 7, rollLastDay: true }),
  lines: [
    someLine({
      id: 'switch',
      description: 'Foot switch replaced',
      symptoms: ['foot switch does nothing'],
      startsOn: day('2025-12-26'),
    }),
  ],
  rows: [
    {
      on: '2026-12-26',
      does: 'asks',
      symptom: 'foot switch does nothing',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'line-covers'],
        days: ['2026-12-26'],
      },
    },
    {
      on: '2026-12-27',
      does: 'asks',
      symptom: 'foot switch does nothing',
      follows: { answer: 'covered-subject-to-inspection', step: 'open-claim', reasons: [...covered] },
    },
    {
      on: '2026-12-29',
      does: 'asks',
      symptom: 'foot switch does nothing',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: [...covered],
        days: ['2026-12-26', '2026-12-29'],
      },
    },
    {
      on: '2026-12-29',
      does: 'reads the count',
      line: 'switch',
      follows:
        '12 months from 26 Dec 2025 ends 26 Dec 2026; a claim can still be opened until Tuesday 29 December 2026',
    },
    {
      on: '2026-12-30',
      does: 'asks',
      symptom: 'foot switch does nothing',
      follows: {
        answer: 'lapsed',
        step: 'ask-a-person',
        reasons: ['serial-same', 'in-grace', 'rights-by-law'],
        days: ['2026-12-26', '2027-01-05'],
      },
    },
    {
      on: '2027-01-06',
      does: 'asks',
      symptom: 'foot switch does nothing',
      follows: {
        answer: 'lapsed',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'line-ended', 'rights-by-law'],
        days: ['2026-12-26', '2026-12-29'],
      },
    },
  ],
};
