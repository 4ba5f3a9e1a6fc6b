import { day } from '@/lib/calendar/day';
import type { History } from '../history';
import { ENGLAND, someLine, someTerms } from '../made';

/**
 * A field recorder whose owner kept the first paper. Twelve months from 10 March 2026 end on Wednesday 10 March 2027.
 * A stay from 1 to 8 March 2027 gives back 7 days: 17 March. The part that failed was replaced; 90 days from 8 March are 23 in
 * March, 30, 31 and 6 in June: Sunday 6 June 2027, claims until Monday the 7th.
 */
export const oldPaper: History = {
  title: 'The old paper scanned again',
  unit: 'Heron HW-2 field recorder',
  serial: 'HHW-20660-A',
  zone: 'Europe/London',
  calendar: ENGLAND,
  terms: someTerms({ graceDays: 0, renewedMinimum: 'P90D' }),
  lines: [
    someLine({
      id: 'xlr',
      kind: 'part',
      description: 'Left input socket',
      symptoms: ['left input silent'],
      startsOn: day('2026-03-10'),
    }),
    someLine({
      id: 'card',
      description: 'Card slot re-soldered',
      symptoms: ['card not found'],
      startsOn: day('2026-03-10'),
    }),
  ],
  rows: [
    { on: '2027-02-27', does: 'opens a claim', claim: 'C1B3D5F7J', follows: 'claim open' },
    { on: '2027-03-01', does: 'hands in', follows: 'held from here' },
    {
      on: '2027-03-04',
      does: 'is ruled',
      draft: {
        cause: 'fitted-part',
        alsoFound: null,
        isEvidenceClear: true,
        evidencePhotos: 1,
        isWithinTerm: true,
        reasonText: '',
        secondLook: null,
      },
      follows: { ruling: 'covered', allowed: true },
    },
    {
      on: '2027-03-08',
      does: 'gets back',
      touched: ['xlr'],
      follows: { revision: 2, ends: { xlr: '2027-06-06', card: '2027-03-17' } },
    },
    {
      on: '2027-05-20',
      does: 'asks',
      symptom: 'left input silent',
      paper: 1,
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'superseded', 'line-covers'],
        days: ['2027-03-08', '2027-06-06'],
      },
    },
    {
      on: '2027-05-20',
      does: 'asks',
      symptom: 'left input silent',
      paper: 2,
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'line-covers'],
        days: ['2027-06-06'],
      },
    },
    {
      on: '2027-05-20',
      does: 'asks',
      symptom: 'card not found',
      paper: 1,
      follows: {
        answer: 'lapsed',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'superseded', 'line-ended', 'rights-by-law'],
        days: ['2027-03-08', '2027-03-17', '2027-03-17'],
      },
    },
    {
      on: '2027-06-07',
      does: 'asks',
      symptom: 'left input silent',
      paper: 1,
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'superseded', 'last-day-moved'],
      },
    },
    {
      on: '2027-06-08',
      does: 'asks',
      symptom: 'left input silent',
      paper: 1,
      follows: {
        answer: 'lapsed',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'superseded', 'line-ended', 'rights-by-law'],
      },
    },
  ],
};
