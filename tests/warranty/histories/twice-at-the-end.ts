import { day } from '@/lib/calendar/day';
import type { RulingDraft } from '@/lib/warranty/rules/ruling';
import type { History } from '../history';
import { ENGLAND, someLine, someTerms } from '../made';

const ourWork: RulingDraft = {
  cause: 'workmanship',
  alsoFound: null,
  isEvidenceClear: true,
  evidencePhotos: 1,
  isWithinTerm: true,
  reasonText: '',
  secondLook: null,
};

/**
 * A headphone amplifier that failed twice, each time close to the end.
 * Ninety days from 1 December 2025 end on 1 March 2026 (30 in December, 31, 28, 1).
 * First stay, 22 February to 4 March: 10 days (6 in February, 4 in March). What nobody touched ends on 11 March. The jack runs
 * on for 90 days from 4 March: 27 in March, 30, 31, and 2 in June, so 2 June.
 * Second stay, 30 May to 9 June: 10 days, so what remains of 2 June is 12 June; 90 days from 9 June are 21 in June, 31, 31 and
 * 7 in September: 7 September. The pot had ended on 11 March and gets nothing from the second stay.
 */
export const twiceAtTheEnd: History = {
  title: 'Twice at the end',
  unit: 'Fulmar HA-1 headphone amplifier',
  serial: 'FHA-3302-K',
  zone: 'Europe/London',
  calendar: ENGLAND,
  terms: someTerms({ workTerm: 'P90D', renewedMinimum: 'P90D', graceDays: 0 }),
  lines: [
    someLine({
      id: 'jack',
      description: 'Headphone jack soldered',
      symptoms: ['one side silent'],
      term: 'P90D',
      startsOn: day('2025-12-01'),
    }),
    someLine({
      id: 'pot',
      description: 'Volume pot cleaned',
      symptoms: ['crackles'],
      term: 'P90D',
      startsOn: day('2025-12-01'),
    }),
  ],
  rows: [
    { on: '2026-02-20', does: 'opens a claim', claim: 'C1B3D5F7J', follows: 'claim open' },
    { on: '2026-02-22', does: 'hands in', follows: 'held from here' },
    { on: '2026-02-27', does: 'is ruled', draft: ourWork, follows: { ruling: 'covered', allowed: true } },
    {
      // After the original end, while the unit is with us: the claim was opened in time.
      on: '2026-03-03',
      does: 'asks',
      symptom: 'one side silent',
      follows: { answer: 'already-open', step: 'see-open-claim', reasons: ['serial-same', 'open-claim'] },
    },
    {
      on: '2026-03-04',
      does: 'gets back',
      touched: ['jack'],
      follows: { revision: 2, ends: { jack: '2026-06-02', pot: '2026-03-11' } },
    },
    {
      on: '2026-03-05',
      does: 'reads the count',
      line: 'jack',
      follows:
        '90 days from 1 Dec 2025, plus 10 days while it was out of your hands, made longer after a covered claim, ends 2 Jun 2026',
    },
    {
      on: '2026-04-01',
      does: 'asks',
      symptom: 'crackles',
      follows: {
        answer: 'lapsed',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'line-ended', 'rights-by-law'],
        days: ['2026-03-11', '2026-03-11'],
      },
    },
    { on: '2026-05-28', does: 'opens a claim', claim: 'C2C4E6G8K', follows: 'claim open' },
    { on: '2026-05-30', does: 'hands in', follows: 'held from here' },
    { on: '2026-06-05', does: 'is ruled', draft: ourWork, follows: { ruling: 'covered', allowed: true } },
    {
      on: '2026-06-09',
      does: 'gets back',
      touched: ['jack'],
      follows: { revision: 3, ends: { jack: '2026-09-07', pot: '2026-03-11' } },
    },
    {
      on: '2026-09-07',
      does: 'asks',
      symptom: 'one side silent',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'line-covers'],
        days: ['2026-09-07'],
      },
    },
    {
      on: '2026-09-08',
      does: 'asks',
      symptom: 'one side silent',
      follows: {
        answer: 'lapsed',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'line-ended', 'rights-by-law'],
      },
    },
  ],
};
