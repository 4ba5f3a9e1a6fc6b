import { day } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import type { History } from '../history';
import { someLine, someTerms } from '../made';

/**
 * A keyboard controller under the German pattern: no days given back, but the fault that was put right is covered for at
 * least two months from the return (BGB 475e(4)). Twelve months from 1 March 2026 end on Monday 1 March 2027. Handed back on
 * 20 February 2027: that fault until Tuesday 20 April, everything else until 1 March.
 */
export const twoMonths: History = {
  title: 'At least two months from the return',
  unit: 'Plover KC-25 keyboard controller',
  serial: 'PKC25-0904',
  zone: 'Europe/Berlin',
  calendar: holidayCalendar({ country: 'DE', years: [2026, 2027] }),
  terms: someTerms({ heldRule: 'two-months-from-return', renewedMinimum: null, graceDays: 0 }),
  lines: [
    someLine({
      id: 'wheel',
      description: 'Pitch wheel spring replaced',
      symptoms: ['pitch wheel stuck'],
      startsOn: day('2026-03-01'),
    }),
    someLine({ id: 'usb', startsOn: day('2026-03-01') }),
  ],
  rows: [
    { on: '2027-01-29', does: 'opens a claim', claim: 'C1B3D5F7J', follows: 'claim open' },
    { on: '2027-02-01', does: 'hands in', follows: 'held from here' },
    {
      on: '2027-02-10',
      does: 'is ruled',
      draft: {
        cause: 'weakened-by-original-damage',
        alsoFound: 'separate-fault',
        isEvidenceClear: true,
        evidencePhotos: 2,
        isWithinTerm: true,
        reasonText: 'The wheel is ours to put right; the cracked end cheek beside it is a new fault.',
        secondLook: { userId: 'mae', role: 'owner' },
      },
      follows: { ruling: 'partly', allowed: true },
    },
    {
      on: '2027-02-20',
      does: 'gets back',
      touched: ['wheel'],
      follows: { revision: 2, ends: { wheel: '2027-04-20', usb: '2027-03-01' } },
    },
    {
      on: '2027-02-21',
      does: 'reads the count',
      line: 'wheel',
      follows: '12 months from 1 Mar 2026, made longer after a covered claim, ends 20 Apr 2027',
    },
    {
      on: '2027-03-02',
      does: 'asks',
      symptom: 'does not charge',
      follows: {
        answer: 'lapsed',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'line-ended', 'rights-by-law'],
      },
    },
    {
      // Berlin is two hours ahead of UTC in April: 20 April ends at 22:00 UTC.
      on: '2027-04-20T21:59:59Z',
      does: 'asks',
      symptom: 'pitch wheel stuck',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'line-covers'],
        days: ['2027-04-20'],
      },
    },
    {
      on: '2027-04-20T22:00:00Z',
      does: 'asks',
      symptom: 'pitch wheel stuck',
      follows: {
        answer: 'lapsed',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'line-ended', 'rights-by-law'],
      },
    },
  ],
};
