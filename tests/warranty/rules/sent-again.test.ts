import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { detour } from '@/lib/warranty/rules/sent-again';

// Common practice, no source.
describe('the days lost when a parcel came back and leaves again', () => {
  it.each([
    ['from 10 to 22 December, where cover starts at delivery', 'delivered', '2026-12-22', '2026-12-22'],
    ['one, where it would start a day later', 'delivered', '2026-12-11', '2026-12-11'],
    ['none where cover starts with the carrier', 'handed-to-carrier', '2026-12-22', null],
    ['none where it would start on the same day', 'delivered', '2026-12-10', null],
    ['none where it would start earlier', 'delivered', '2026-12-09', null],
  ] as const)('are %s', (_, startEvent, again, to) => {
    const startsOn = day('2026-12-10');
    expect(detour({ startEvent, startsOn, again: day(again) })).toEqual(to && { from: startsOn, to });
  });
});
