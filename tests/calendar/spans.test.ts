import { expect, test } from 'vitest';
import { day, dayInZone } from '@/lib/calendar/day';
import { instantDaysAfter, instantDaysBefore } from '@/lib/calendar/spans';

test('a day is twenty-four hours, over a change of the clocks too', () => {
  // In Berlin the clocks went back in the night to 25 October 2026.
  const midnight = new Date('2026-10-24T22:00:00Z');
  expect(dayInZone(midnight, 'Europe/Berlin')).toBe(day('2026-10-25'));
  const later = instantDaysAfter(midnight, 1);
  expect(later).toEqual(new Date('2026-10-25T22:00:00Z'));
  expect(dayInZone(later, 'Europe/Berlin')).toBe(day('2026-10-25'));
  expect(instantDaysBefore(later, 1)).toEqual(midnight);
  expect(instantDaysBefore(midnight, 0)).toEqual(midnight);
});
