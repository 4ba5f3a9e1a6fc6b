import { day } from '@/lib/calendar/day';
import type { History } from '../history';
import { ENGLAND, someLine, someTerms } from '../made';

/**
 * A field recorder that never came back. Twelve months from Thursday 3 December 2026, that day not counted, end with
 * Friday 3 December 2027; fourteen days of grace follow, to the 17th. The clock is London's, in winter equal to UTC.
 */
export const quietYear: History = {
  title: 'A quiet year',
  unit: 'Heron HW-2 field recorder',
  serial: 'HHW-20417-C',
  zone: 'Europe/London',
  calendar: ENGLAND,
  terms: someTerms({ graceDays: 14 }),
  lines: [someLine({ id: 'usb', startsOn: day('2026-12-03'), term: 'P12M' })],
  rows: [
    {
      on: '2027-06-01',
      does: 'asks',
      symptom: 'loose plug',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'line-covers'],
        days: ['2027-12-03'],
      },
    },
    {
      on: '2027-06-01',
      does: 'reads the count',
      line: 'usb',
      follows: '12 months from 3 Dec 2026 ends 3 Dec 2027',
    },
    {
      // The last second of the last day.
      on: '2027-12-03T23:59:59Z',
      does: 'asks',
      symptom: 'loose plug',
      follows: {
        answer: 'covered-subject-to-inspection',
        step: 'open-claim',
        reasons: ['serial-same', 'line-covers'],
      },
    },
    {
      // 24:00 is the start of the 4th.
      on: '2027-12-04T00:00:00Z',
      does: 'asks',
      symptom: 'loose plug',
      follows: {
        answer: 'lapsed',
        step: 'ask-a-person',
        reasons: ['serial-same', 'in-grace', 'rights-by-law'],
        days: ['2027-12-03', '2027-12-17'],
      },
    },
    {
      on: '2027-12-17',
      does: 'asks',
      symptom: 'loose plug',
      follows: {
        answer: 'lapsed',
        step: 'ask-a-person',
        reasons: ['serial-same', 'in-grace', 'rights-by-law'],
      },
    },
    {
      on: '2027-12-18',
      does: 'asks',
      symptom: 'loose plug',
      follows: {
        answer: 'lapsed',
        step: 'book-paid-repair',
        reasons: ['serial-same', 'line-ended', 'rights-by-law'],
        days: ['2027-12-03', '2027-12-03'],
      },
    },
  ],
};
