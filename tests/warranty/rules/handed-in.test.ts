import { expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { handedInOn } from '@/lib/warranty/rules/handed-in';

const openedOn = day('2027-02-01');

test.each([
  ['told', '2027-07-18', '2027-07-20', '2027-07-18'],
  ['told, and a long way off', '2027-07-02', '2027-07-20', '2027-07-02'],
  ['told, and the reference put right later', '2027-07-15 2027-07-19', '2027-07-20', '2027-07-15'],
  ['told long before it was posted, and put right', '2027-03-01 2027-07-19', '2027-07-20', '2027-07-13'],
  ['put right, and a long way off', '2027-07-02 2027-07-03', '2027-07-20', '2027-07-03'],
  ['told, and posted before the claim was opened', '2027-01-30', '2027-02-02', '2027-02-01'],
  ['told nothing, and it came within a week', null, '2027-02-08', '2027-02-01'],
  ['told nothing, and it came half a year later', null, '2027-07-20', '2027-07-13'],
  ['that never came', null, null, '2027-02-01'],
] as const)('days are given back from the parcel: %s', (_what, named, arrived, expected) => {
  const namedOn = named?.split(' ').map(day) ?? [];
  expect(handedInOn({ openedOn, namedOn, arrivedOn: arrived && day(arrived) })).toBe(expected);
});
