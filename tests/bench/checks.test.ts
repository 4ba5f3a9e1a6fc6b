import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type CheckLimits,
  evaluateEntry,
  limitsText,
  provingState,
  readMeter,
  readReading,
} from '@/lib/bench/rules/checks';

const volts: CheckLimits = { kind: 'reading', low: 4.75, high: 5.25, choices: [], passing: [] };
const tick: CheckLimits = { kind: 'tick', low: null, high: null, choices: [], passing: [] };
const choice: CheckLimits = {
  kind: 'choice',
  low: null,
  high: null,
  choices: ['clean', 'faint noise', 'hum'],
  passing: ['clean', 'faint noise'],
};

describe('one entry', () => {
  test.each([
    { name: 'at the lowest limit', reading: 4.75, isPassed: true },
    { name: 'at the highest limit', reading: 5.25, isPassed: true },
    { name: 'just below', reading: 4.7499, isPassed: false },
    { name: 'just above', reading: 5.2501, isPassed: false },
  ])('a reading $name passes: $isPassed', ({ reading, isPassed }) => {
    expect(evaluateEntry(volts, { reading })).toEqual({ ok: true, isPassed, reading, choice: null });
  });

  // Insulation tests often read over the meter's range (common practice, no source): what is known is that it is more than its end.
  const atLeast = { ...volts, low: 2, high: null };
  const atMost = { ...volts, low: null, high: 0.3 };
  test.each([
    { name: 'a minimum below the range’s end', check: atLeast, end: 200, isPassed: true },
    { name: 'a minimum at the range’s end', check: atLeast, end: 2, isPassed: true },
    { name: 'no limit', check: { ...atLeast, low: null }, end: 2, isPassed: true },
    { name: 'a maximum below the range’s end', check: atMost, end: 2, isPassed: false },
    { name: 'a maximum at the range’s end', check: atMost, end: 0.3, isPassed: false },
  ])('over range, with $name, it passes: $isPassed', ({ check, end, isPassed }) => {
    expect(evaluateEntry(check, { reading: end, isOverRange: true })).toEqual({
      ok: true,
      isPassed,
      reading: end,
      isOverRange: true,
      choice: null,
    });
  });

  test.each([
    { name: 'a minimum above the range’s end', check: atLeast, end: 1 },
    { name: 'a maximum above the range’s end', check: atMost, end: 0.2 },
    { name: 'two limits around it', check: volts, end: 5 },
  ])('over range, with $name, it says nothing', ({ check, end }) => {
    expect(evaluateEntry(check, { reading: end, isOverRange: true })).toEqual({
      ok: false,
      problem: 'range-too-short',
    });
  });

  test('a missing limit is no limit', () => {
    expect(evaluateEntry({ ...volts, high: null }, { reading: 1e9 })).toMatchObject({ isPassed: true });
    expect(evaluateEntry({ ...volts, low: null }, { reading: -1e9 })).toMatchObject({ isPassed: true });
  });

  test.each([
    ['clean', true],
    ['faint noise', true],
    ['hum', false],
  ])('the choice %s passes: %s', (given, isPassed) => {
    expect(evaluateEntry(choice, { choice: given })).toEqual({
      ok: true,
      isPassed,
      reading: null,
      choice: given,
    });
  });

  test('an empty tick is a failed check, not a missing one', () => {
    expect(evaluateEntry(tick, {})).toMatchObject({ ok: true, isPassed: false });
    expect(evaluateEntry(tick, { tick: true })).toMatchObject({ ok: true, isPassed: true });
  });

  test.each([
    { name: 'no reading', check: volts, given: {}, problem: 'no-reading' },
    {
      name: 'a reading that is no number',
      check: volts,
      given: { reading: Number.NaN },
      problem: 'no-reading',
    },
    {
      name: 'an endless reading',
      check: volts,
      given: { reading: Number.POSITIVE_INFINITY },
      problem: 'no-reading',
    },
    { name: 'no choice', check: choice, given: { choice: '' }, problem: 'no-choice' },
    {
      name: 'a choice of another check',
      check: choice,
      given: { choice: 'loud' },
      problem: 'unknown-choice',
    },
    {
      name: 'a kind nobody knows',
      check: { ...tick, kind: 'smell' },
      given: { tick: true },
      problem: 'unknown-kind',
    },
  ])('$name is refused', ({ check, given, problem }) => {
    expect(evaluateEntry(check, given)).toEqual({ ok: false, problem });
  });
});

test.each([
  ['4.98', 4.98],
  ['4,98', 4.98],
  [' -12 ', -12],
  ['−0.5', -0.5],
  ['.5', 0.5],
  ['5.', 5],
  ['', null],
  ['1,000.5', null],
  ['5V', null],
  ['1e3', null],
  ['Infinity', null],
])('a reading typed as "%s" is %s', (text, expected) => {
  expect(readReading(text)).toBe(expected);
});

test.each([
  ['>200', { reading: 200, isOverRange: true }],
  [' > 2,5 ', { reading: 2.5, isOverRange: true }],
  ['200', { reading: 200, isOverRange: false }],
  ['OL', null],
  ['>', null],
  ['>>2', null],
])('a meter that shows "%s" reads %o', (text, expected) => {
  expect(readMeter(text)).toEqual(expected);
});

test.each([
  [{ ...volts, unit: 'V' }, '4.75 to 5.25 V'],
  [{ ...volts, low: null, high: 0.3, unit: 'Ω' }, 'at most 0.3 Ω'],
  [{ ...volts, low: 2, high: null, unit: 'MΩ' }, 'at least 2 MΩ'],
  [{ ...choice, unit: null }, 'pass: clean or faint noise'],
  [{ ...tick, unit: null }, ''],
])('limits in words %#', (check, expected) => {
  expect(limitsText(check)).toBe(expected);
});

describe('where a job stands on its sheet', () => {
  const checks = [{ id: 'a' }, { id: 'b' }];
  const noon = new Date('2026-11-02T12:00:00Z');
  const one = new Date('2026-11-02T13:00:00Z');

  test('a failed check that was done again and passed is passed', () => {
    const entries = [
      { checkId: 'a', isPassed: false, at: noon },
      { checkId: 'a', isPassed: true, at: one },
      { checkId: 'b', isPassed: true, at: noon },
    ];
    expect(provingState(checks, entries)).toEqual({
      passed: checks,
      failed: [],
      missing: [],
      isProved: true,
    });
    expect(entries).toHaveLength(3);
  });

  test('a passed check that later failed is failed, in whatever order the rows come', () => {
    const entries = [
      { checkId: 'a', isPassed: false, at: one },
      { checkId: 'a', isPassed: true, at: noon },
    ];
    expect(provingState(checks, entries)).toMatchObject({
      failed: [{ id: 'a' }],
      missing: [{ id: 'b' }],
      isProved: false,
    });
  });

  test('of two entries of the same instant the later row decides', () => {
    const entries = [
      { checkId: 'a', isPassed: false, at: noon },
      { checkId: 'a', isPassed: true, at: noon },
    ];
    expect(provingState([{ id: 'a' }], entries).isProved).toBe(true);
  });

  test('entries of another sheet prove nothing', () => {
    expect(provingState([{ id: 'a' }], [{ checkId: 'z', isPassed: true, at: noon }]).isProved).toBe(false);
  });

  test('a sheet without checks proves nothing', () => {
    expect(provingState([], []).isProved).toBe(false);
  });

  test('every check is in exactly one of the three lists, and proved means all passed', () => {
    const entry = fc.record({
      checkId: fc.constantFrom('a', 'b', 'c', 'x'),
      isPassed: fc.boolean(),
      at: fc.date({ min: noon, max: one, noInvalidDate: true }),
    });
    fc.assert(
      fc.property(fc.array(entry), (entries) => {
        const sheet = [{ id: 'a' }, { id: 'b' }, { id: 'c' }];
        const state = provingState(sheet, entries);
        const all = [...state.passed, ...state.failed, ...state.missing].map((check) => check.id).sort();
        expect(all).toEqual(['a', 'b', 'c']);
        expect(state.isProved).toBe(state.passed.length === 3);
      }),
    );
  });
});
