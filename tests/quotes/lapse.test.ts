import { describe, expect, it } from 'vitest';
import { addDays, day } from '@/lib/calendar/day';
import { lapseStep } from '@/lib/quotes/rules/lapse';

const ISSUED = day('2026-12-01');
/** 30 calendar days from 1 December, the event's day not counted (Regulation 1182/71 Art. 3(1)): 31 December. */
const UNTIL = addDays(ISSUED, 30);

describe('a price that nobody answers', () => {
  it.each([
    ['holds on the day it is issued', '2026-12-01', false, 5, null],
    ['is left alone until five days before its last', '2026-12-25', false, 5, null],
    ['is reminded of on that day', '2026-12-26', false, 5, 'remind'],
    ['or later, where the clock stood still', '2026-12-31', false, 5, 'remind'],
    ['but only once', '2026-12-27', true, 5, null],
    ['and not at all where the workshop sends no reminders', '2026-12-31', false, 0, null],
    ['nor where it held no longer than twice those days', '2026-12-31', false, 15, null],
    ['holds through its last day', '2026-12-31', true, 5, null],
    ['lapses on the day after, reminded of', '2027-01-01', true, 5, 'lapse'],
    ['or not', '2027-01-01', false, 5, 'lapse'],
  ] as const)('%s', (_name, today, isReminded, remindDays, step) => {
    const price = { issuedOn: ISSUED, validUntil: UNTIL, isReminded };
    expect(UNTIL).toBe('2026-12-31');
    expect(lapseStep(price, { today: day(today), remindDays })).toBe(step);
  });
});
