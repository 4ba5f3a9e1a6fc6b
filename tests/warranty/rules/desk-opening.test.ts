import { describe, expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { deskOpening } from '@/lib/warranty/rules/desk-opening';
import { ANSWERS, type Answer, type NextStep } from '@/lib/warranty/rules/reasons';

const of = (answer: Answer, nextStep: NextStep | null) =>
  deskOpening({ answer, nextStep, reasons: [], needs: [] });
const until = day('2027-12-10');

describe('a claim in the customer’s place', () => {
  test.each([
    ['while cover runs', 'covered-subject-to-inspection', { kind: 'open-claim', until }],
    ['with a serial that is close', 'confirm-serial', { kind: 'send-serial-photo' }],
    ['in the days of grace', 'lapsed', { kind: 'ask-a-person', until }],
  ] as const)('is opened by whoever takes parcels in %s', (_name, answer, step) => {
    expect(of(answer, step)).toBe('anyone');
  });

  test('is the owner’s alone once the days of grace are over', () => {
    expect(of('lapsed', { kind: 'book-paid-repair' })).toBe('owner');
  });

  test.each([
    ['a number of nobody', 'not-recognised', null],
    ['another unit', 'other-unit', { kind: 'check-serial' }],
    ['a symptom that no list has', 'outside-cover', { kind: 'book-paid-repair' }],
    ['a claim that is open', 'already-open', { kind: 'see-open-claim', claimNumber: 'C1' }],
    ['a claim that is open on cover that ended', 'lapsed', { kind: 'see-open-claim', claimNumber: 'C1' }],
  ] as const)('is nobody’s for %s', (_name, answer, step) => {
    expect(of(answer, step)).toBe('nobody');
  });

  test('no answer but those that open one to somebody is anyone’s without a next step', () => {
    expect(ANSWERS.filter((answer) => of(answer, null) !== 'nobody')).toEqual([
      'confirm-serial',
      'covered-subject-to-inspection',
    ]);
  });
});
