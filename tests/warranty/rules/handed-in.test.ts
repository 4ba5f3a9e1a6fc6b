import { expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { handedInOn } from '@/lib/warranty/rules/handed-in';

const openedOn = day('2027-02-01');

test.each([
  ['told', '2027-07-18', '2027-07-20', '2027-07-18'],
  ['told, and posted before the claim was opened', '2027-01-30', '2027-02-02', '2027-02-01'],
  ['told nothing, and it came within a week', null, '2027-02-08', '2027-02-01'],
  ['told nothing, and it came half a year later', null, '2027-07-20', '2027-07-13'],
  ['that never came', null, null, '2027-02-01'],
] as const)('days are given back from the parcel: %s', (_what, posted, arrived, expected) => {
  const on = (text: string | null) => (text === null ? null : day(text));
  expect(handedInOn({ openedOn, postedOn: on(posted), arrivedOn: on(arrived) })).toBe(expected);
});
