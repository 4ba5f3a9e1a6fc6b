import { day } from '@/lib/calendar/day';
import type { RulingDraft } from '@/lib/warranty/rules/ruling';
import type { History } from '../history';
import { ENGLAND, someLine, someTerms } from '../made';

const nothingFound: RulingDraft = {
  cause: 'no-fault-found',
  alsoFound: null,
  isEvidenceClear: true,
  evidencePhotos: 2,
  isWithinTerm: true,
  reasonText: 'Every key sent its note for two hours on our bench.',
  secondLook: { userId: 'mae', role: 'owner' },
};

/**
 * A keyboard controller sent back on 29 February 2024, under a policy that gives back only stays from seven days on.
 * Work: 12 months, so 28 February 2025, the last day of that month. Part: 24 months, so 28 February 2026, counted from the
 * leap day and not from the first end. Stay one, 3 to 9 June 2024: 6 days, nothing. Stay two, 1 to 9 September: 8 days, given
 * back whole: Saturday 8 March 2025 and Sunday 8 March 2026, claims until the Mondays after, the 10th and the 9th.
 */
export const leapDay: History = {
  title: 'Sent back on a leap day',
  unit: 'Plover KC-49 keyboard controller',
  serial: 'PKC49-1126',
  zone: 'Europe/London',
  calendar: ENGLAND,
  terms: someTerms({ partsTerm: 'P24M', heldRule: 'from-seven-days', graceDays: 0 }),
  lines: [
    someLine({
      id: 'ribbon',
      description: 'Ribbon connector re-seated',
      symptoms: ['keys dead'],
      term: 'P12M',
      startsOn: day('2024-02-29'),
    }),
    someLine({
      id: 'board',
      kind: 'part',
      description: 'Key contact board',
      symptoms: ['keys dead', 'keys double'],
      term: 'P24M',
      startsOn: day('2024-02-29'),
    }),
  ],
  rows: [
    {
      on: '2024-03-01',
      does: 'reads the count',
      line: 'board',
      follows:
        '24 months from 29 Feb 2024 ends 28 Feb 2026; a claim can still be opened until Monday 2 March 2026',
    },
    { on: '2024-06-02', does: 'opens a claim', claim: 'C1B3D5F7J', follows: 'claim open' },
    { on: '2024-06-03', does: 'hands in', follows: 'held from here' },
    {
      on: '2024-06-07',
      does: 'is ruled',
      draft: nothingFound,
      follows: { ruling: 'returned-free', allowed: true },
    },
    {
      on: '2024-06-09',
      does: 'gets back',
      touched: [],
      follows: { revision: 1, ends: { ribbon: '2025-02-28', board: '2026-02-28' } },
    },
    { on: '2024-08-31', does: 'opens a claim', claim: 'C2C4E6G8K', follows: 'claim open' },
    { on: '2024-09-01', does: 'hands in', follows: 'held from here' },
    {
      on: '2024-09-06',
      does: 'is ruled',
      draft: nothingFound,
      follows: { ruling: 'returned-free', allowed: true },
    },
    {
      on: '2024-09-09',
      does: 'gets back',
      touched: [],
      follows: { revision: 1, ends: { ribbon: '2025-03-08', board: '2026-03-08' } },
    },
    {
      on: '2025-03-10',
      does: 'asks',
      symptom: 'keys dead',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'last-day-moved', 'line-covers'],
        days: ['2025-03-08', '2025-03-10', '2026-03-08'],
      },
    },
    {
      on: '2026-03-09',
      does: 'asks',
      symptom: 'keys double',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'last-day-moved'],
        days: ['2026-03-08', '2026-03-09'],
      },
    },
    {
      on: '2026-03-10',
      does: 'asks',
      symptom: 'keys double',
      follows: {
        answer: 'lapsed',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'line-ended', 'rights-by-law'],
      },
    },
  ],
};
