import { day } from '@/lib/calendar/day';
import type { History } from '../history';
import { ENGLAND, someLine, someTerms } from '../made';

/**
 * A groove box with a fault nobody could find. Twelve months from 15 January 2026 end on 15 January 2027. It was out of the
 * customer's hands from 1 to 21 July: 20 whole days, the 1st not counted. 15 January plus 20 days is 4 February 2027, a
 * Thursday. The days are given back though nothing was found, and no new revision is needed for it.
 */
export const threeWeeksAway: History = {
  title: 'Three weeks away, no fault found',
  unit: 'Osprey GB-8 groove box',
  serial: 'OGB8-7731',
  zone: 'Europe/London',
  calendar: ENGLAND,
  terms: someTerms({ graceDays: 14 }),
  lines: [
    someLine({
      id: 'pads',
      description: 'Pad board re-soldered',
      symptoms: ['pads do not trigger'],
      startsOn: day('2026-01-15'),
    }),
  ],
  rows: [
    { on: '2026-06-30', does: 'opens a claim', claim: 'C8H2M4T6V', follows: 'claim open' },
    { on: '2026-07-01', does: 'hands in', follows: 'held from here' },
    {
      on: '2026-07-10',
      does: 'asks',
      symptom: 'pads do not trigger',
      follows: {
        answer: 'already-open',
        step: 'see-open-claim',
        reasons: ['serial-same', 'open-claim'],
        days: ['2026-06-30'],
      },
    },
    {
      on: '2026-07-17',
      does: 'is ruled',
      draft: {
        cause: 'no-fault-found',
        alsoFound: null,
        isEvidenceClear: true,
        evidencePhotos: 3,
        isWithinTerm: true,
        reasonText: 'All sixteen pads triggered on our bench for a whole day; the film is attached.',
        secondLook: { userId: 'mae', role: 'owner' },
      },
      follows: { ruling: 'returned-free', allowed: true },
    },
    {
      on: '2026-07-21',
      does: 'gets back',
      touched: [],
      follows: { revision: 1, ends: { pads: '2027-02-04' } },
    },
    {
      on: '2026-07-22',
      does: 'reads the count',
      line: 'pads',
      follows: '12 months from 15 Jan 2026, plus 20 days while it was out of your hands, ends 4 Feb 2027',
    },
    {
      on: '2027-02-04',
      does: 'asks',
      symptom: 'pads do not trigger',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'line-covers'],
        days: ['2027-02-04'],
      },
    },
    {
      on: '2027-02-05',
      does: 'asks',
      symptom: 'pads do not trigger',
      // 14 days from 4 February.
      follows: {
        answer: 'lapsed',
        step: 'ask-a-person',
        reasons: ['serial-same', 'in-grace', 'rights-by-law'],
        days: ['2027-02-04', '2027-02-18'],
      },
    },
  ],
};
