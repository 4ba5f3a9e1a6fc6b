import { day } from '@/lib/calendar/day';
import type { History } from '../history';
import { ENGLAND, someLine, someTerms } from '../made';

/**
 * An effect pedal with a new power jack: 90 days on the work, 12 months on the part, no days given back, no grace.
 * From 1 July 2026 the work ends on Tuesday 29 September (30 in July, 31, 29), the part on Thursday 1 July 2027.
 * In September London is one hour ahead of UTC: the 29th ends at 23:00 UTC.
 */
export const workAndPart: History = {
  title: 'Work and part, each with its own term',
  unit: 'Tern Echo 2 effect pedal',
  serial: 'TE2-40911',
  zone: 'Europe/London',
  calendar: ENGLAND,
  terms: someTerms({ workTerm: 'P90D', partsTerm: 'P12M', heldRule: 'none', graceDays: 0 }),
  lines: [
    someLine({
      id: 'work',
      description: 'Power jack fitted',
      symptoms: ['jack is loose', 'no power'],
      term: 'P90D',
      startsOn: day('2026-07-01'),
    }),
    someLine({
      id: 'part',
      kind: 'part',
      description: 'Power jack, 2.1 mm',
      symptoms: ['no power'],
      term: 'P12M',
      startsOn: day('2026-07-01'),
    }),
  ],
  rows: [
    {
      on: '2026-09-29T22:59:59Z',
      does: 'asks',
      symptom: 'jack is loose',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'line-covers'],
        days: ['2026-09-29'],
      },
    },
    {
      on: '2026-09-29T23:00:00Z',
      does: 'asks',
      symptom: 'jack is loose',
      follows: {
        answer: 'lapsed',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'line-ended', 'rights-by-law'],
      },
    },
    {
      on: '2026-09-29T23:00:00Z',
      does: 'asks',
      symptom: 'no power',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'line-covers'],
        days: ['2027-07-01'],
      },
    },
    {
      on: '2026-12-01',
      does: 'asks',
      symptom: 'case is cracked',
      follows: {
        answer: 'outside-cover',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'symptom-outside', 'rights-by-law'],
      },
    },
    {
      on: '2026-12-01',
      does: 'asks',
      symptom: 'other',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'symptom-unlisted', 'line-covers'],
        days: ['2027-07-01'],
      },
    },
    {
      on: '2027-07-02',
      does: 'asks',
      symptom: 'case is cracked',
      // Everything has ended, which is the stronger ground; both lines are named.
      follows: {
        answer: 'lapsed',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'line-ended', 'line-ended', 'rights-by-law'],
        days: ['2026-09-29', '2026-09-29', '2027-07-01', '2027-07-01'],
      },
    },
  ],
};
