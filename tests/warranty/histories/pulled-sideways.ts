import { day } from '@/lib/calendar/day';
import type { RulingDraft } from '@/lib/warranty/rules/ruling';
import type { History } from '../history';
import { ENGLAND, someLine, someTerms } from '../made';

const pulled: RulingDraft = {
  cause: 'damage-after-return',
  alsoFound: null,
  isEvidenceClear: false,
  evidencePhotos: 1,
  isWithinTerm: true,
  reasonText: '',
  secondLook: null,
};

/**
 * A headphone amplifier with a torn socket, twice. The first time nobody could say for sure, so it was covered by doubt; the
 * second time a photo showed it.
 * Six months from 31 August 2026 end on Sunday 28 February 2027. First stay 1 to 11 February: 10 days, and 28 February
 * plus 10 is 10 March; 90 days from 11 February are 17 in February, 31, 30 and 12 in May: 12 May 2027.
 * Second stay 3 to 13 May: 10 days. The renewed minimum was still running, so it waits too: 22 May.
 */
export const pulledSideways: History = {
  title: 'A socket pulled sideways',
  unit: 'Fulmar HA-1 headphone amplifier',
  serial: 'FHA-2250-B',
  zone: 'Europe/London',
  calendar: ENGLAND,
  terms: someTerms({ workTerm: 'P6M', renewedMinimum: 'P90D', graceDays: 0 }),
  lines: [
    someLine({
      id: 'usb',
      symptoms: ['does not charge'],
      term: 'P6M',
      startsOn: day('2026-08-31'),
    }),
  ],
  rows: [
    {
      on: '2026-09-01',
      does: 'reads the count',
      line: 'usb',
      follows:
        '6 months from 31 Aug 2026 ends 28 Feb 2027; a claim can still be opened until Monday 1 March 2027',
    },
    { on: '2027-01-30', does: 'opens a claim', claim: 'C1B3D5F7J', follows: 'claim open' },
    { on: '2027-02-01', does: 'hands in', follows: 'held from here' },
    { on: '2027-02-05', does: 'is ruled', draft: pulled, follows: { ruling: 'covered', allowed: true } },
    { on: '2027-02-05', does: 'contests', follows: { allowed: false, reason: 'nothing-to-contest' } },
    {
      on: '2027-02-11',
      does: 'gets back',
      touched: ['usb'],
      follows: { revision: 2, ends: { usb: '2027-05-12' } },
    },
    { on: '2027-05-01', does: 'opens a claim', claim: 'C2C4E6G8K', follows: 'claim open' },
    { on: '2027-05-03', does: 'hands in', follows: 'held from here' },
    {
      on: '2027-05-05',
      does: 'is ruled',
      draft: { ...pulled, isEvidenceClear: true },
      follows: { ruling: 'not-covered', allowed: false, missing: ['written-reason', 'owner-second-look'] },
    },
    {
      on: '2027-05-06',
      does: 'is ruled',
      draft: {
        ...pulled,
        isEvidenceClear: true,
        reasonText: 'The plug was pulled to the side with force: photo 1 shows the shell bent outwards.',
        secondLook: { userId: 'mae', role: 'owner' },
      },
      follows: { ruling: 'not-covered', allowed: true },
    },
    { on: '2027-05-07', does: 'contests', follows: { allowed: true } },
    { on: '2027-05-10', does: 'contests', follows: { allowed: false, reason: 'already-contested' } },
    {
      // Nothing was repaired, but the minimum moved, so the paper is issued again.
      on: '2027-05-13',
      does: 'gets back',
      touched: [],
      follows: { revision: 3, ends: { usb: '2027-05-22' } },
    },
    {
      // 22 May is a Saturday; the Monday after is the 24th.
      on: '2027-05-24',
      does: 'asks',
      symptom: 'does not charge',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'last-day-moved'],
        days: ['2027-05-22', '2027-05-24'],
      },
    },
  ],
};
