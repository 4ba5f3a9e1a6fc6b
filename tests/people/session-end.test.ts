import { describe, expect, test } from 'vitest';
import { isEndNear, nextLook, sessionEnd } from '@/lib/people/rules/session-end';

const at = (time: string) => new Date(`2026-12-03T${time}Z`);

describe('when a session ends', () => {
  test.each([
    ['four hours after the last click', '09:00', '20:00', '13:00', false],
    ['with the day it is for, though it was used a moment ago', '19:00', '20:00', '20:00', true],
    ['when both fall together, for good', '16:00', '20:00', '20:00', true],
  ])('%s', (_name, used, until, ends, isLast) => {
    expect(sessionEnd({ updatedAt: at(used), expiresAt: at(until) })).toEqual({ at: at(ends), isLast });
  });
});

describe('how often a page looks', () => {
  test.each([
    ['not before the end is near', 14_400, 13_800, false],
    ['when it is near, and each minute from then on', 600, 60, true],
    ['a moment after the end, not before it', 20, 21, true],
    ['where the end has passed, not without a pause', -5, 1, true],
  ])('%s', (_name, left, look, isNear) => {
    expect(nextLook(left)).toBe(look);
    expect(isEndNear(left)).toBe(isNear);
  });

  test('the first look comes when the end is near, however long that is away', () => {
    for (const left of [601, 3_600, 43_200]) expect(isEndNear(left - nextLook(left))).toBe(true);
  });
});
