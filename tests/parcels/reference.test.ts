import { expect, test } from 'vitest';
import { eventLine } from '@/lib/jobs/rules/events';
import { isUnchecked, referenceProblem } from '@/lib/parcels/rules/reference';

// RR 47312482 9 GB: the example of UPU S10.
test.each([
  ['a postal reference', 'RR 47312482 9 GB', false, false],
  ['one with a wrong digit', 'RR473124828GB', true, false],
  ['a number of a carrier’s own form', 'TT-2201', false, true],
  ['none', '', false, false],
])('of %s it is known whether it could be checked', (_name, reference, isWrong, unchecked) => {
  expect(referenceProblem(reference) !== null).toBe(isWrong);
  expect(isUnchecked(reference)).toBe(unchecked);
});

test('the history says of a reference that it was not checked', () => {
  const named = (reference: string) => eventLine('parcel-named', { reference });
  expect(named('TT-2201')).toBe('Parcel posted by the customer: TT-2201 (number not checked)');
  expect(named('RR473124829GB')).toBe('Parcel posted by the customer: RR473124829GB');
  expect(named('')).toBe('Parcel posted by the customer');
  const sent = (reference: string, isCollected?: boolean) =>
    eventLine('sent-back', {
      carrier: isCollected ? '' : 'Harbour Parcels',
      reference,
      certificate: null,
      isCollected,
    });
  expect(sent('TT-2201')).toBe('Handed to Harbour Parcels (number not checked)');
  expect(sent('RR473124829GB')).toBe('Handed to Harbour Parcels');
  expect(sent('', true)).toBe('Collected by the customer');
  expect(eventLine('reference-corrected', { reference: 'TT-2210' })).toMatch(
    /TT-2210 \(number not checked\)$/,
  );
});
