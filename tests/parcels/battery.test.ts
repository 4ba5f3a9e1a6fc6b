import { describe, expect, test } from 'vitest';
import {
  BATTERY_CONDITIONS,
  BATTERY_KINDS,
  batteryVerdict,
  LOCAL_RULES_FIRST,
} from '@/lib/parcels/rules/battery';
import {
  BATTERY_ANSWERS,
  batteryAnswersFor,
  isBatteryAnswer,
  verdictOnAnswer,
} from '@/lib/parcels/rules/battery-answers';

const recorder = { battery: 'lithium-ion', wattHours: 9.25 } as const;

test('every verdict gives a reason of its own, and ends by saying that local rules and the carrier come first', () => {
  for (const battery of BATTERY_KINDS) {
    for (const condition of BATTERY_CONDITIONS) {
      for (const packing of ['in-unit', 'with-unit', 'alone'] as const) {
        for (const wattHours of [null, 5, 50, 500]) {
          const verdict = batteryVerdict({ battery, condition, packing, wattHours });
          expect(verdict.reasons.length).toBeGreaterThan(1);
          expect(verdict.reasons.at(-1)).toBe(LOCAL_RULES_FIRST);
          expect(verdict.insteadSteps.length > 0).toBe(verdict.may !== 'post');
        }
      }
    }
  }
});

test('damage is told before size', () => {
  const verdict = batteryVerdict({
    battery: 'lithium-ion',
    wattHours: null,
    packing: 'in-unit',
    condition: 'swollen',
  });
  expect(verdict.code).toBe('damaged');
});

test('a battery of unknown size is not posted', () => {
  expect(verdictOnAnswer({ battery: 'lithium-ion', wattHours: null }, 'healthy').code).toBe('unclear-size');
});

test('a size just above the limit is not shown as one at the limit', () => {
  const verdict = batteryVerdict({
    ...recorder,
    wattHours: 100.0036,
    packing: 'in-unit',
    condition: 'healthy',
  });
  expect(verdict.reasons[0]).toContain('100.0036 Wh is above the limit of 100 Wh');
});

test.each([
  { wattHours: 0, name: 'no energy' },
  { wattHours: -3, name: 'less than nothing' },
  { wattHours: Number.NaN, name: 'no number' },
])('a size of $name is refused', ({ wattHours }) => {
  expect(() => verdictOnAnswer({ battery: 'lithium-ion', wattHours }, 'healthy')).toThrow(RangeError);
});

test.each([0, 1.5, -1])('a count of %d cells is refused', (cells) => {
  const facts = { ...recorder, packing: 'in-unit', condition: 'healthy', cells } as const;
  expect(() => batteryVerdict(facts)).toThrow(RangeError);
});

describe('the question the customer answers', () => {
  test('has an answer for every condition, and one for no battery', () => {
    expect(BATTERY_ANSWERS.map((answer) => answer.value).sort()).toEqual(
      [...BATTERY_CONDITIONS, 'none'].sort(),
    );
  });

  test.each([
    ['healthy', 'post'],
    ['weak', 'post'],
    ['none', 'post'],
    ['swollen', 'do-not-post'],
    ['unknown', 'do-not-post'],
  ] as const)('%s: %s', (answer, may) => {
    expect(verdictOnAnswer(recorder, answer).may).toBe(may);
  });

  test('is not asked of a unit without a battery', () => {
    expect(batteryAnswersFor('none')).toEqual([]);
  });

  test('reads only its own answers', () => {
    expect(isBatteryAnswer('swollen')).toBe(true);
    expect(isBatteryAnswer('fine')).toBe(false);
  });
});
