import { describe, expect, test } from 'vitest';
import { addDays, day, dayInZone, startOfDay } from '@/lib/calendar/day';
import { formatDay, formatInstant } from '@/lib/calendar/format';
import { holidayCalendar } from '@/lib/calendar/holidays';
import { addPeriod } from '@/lib/calendar/period';
import { addWorkingDays, workingDaysBetween } from '@/lib/calendar/working';

// A list page may call each of these a thousand times. Measured on two cores with Node 20: 1 to 25 ms a thousand.
// The limit is ten times that, and in time of the processor, so that a busy machine does not fail it.
const LIMIT_MS = 250;

const zone = 'Europe/London';
const first = day('2026-01-01');
const calendar = holidayCalendar({ country: 'GB', region: 'ENG', years: [2026, 2027, 2028] });
const at = (i: number) => new Date(Date.UTC(2026, 0, 1, i * 7));

describe('a thousand calls stay below a quarter of a second', () => {
  test.each<[string, (i: number) => unknown]>([
    ['addDays', (i) => addDays(first, i)],
    ['addPeriod', (i) => addPeriod(addDays(first, i % 365), 'P12M')],
    ['dayInZone', (i) => dayInZone(at(i), zone)],
    ['startOfDay', (i) => startOfDay(addDays(first, i), zone)],
    ['addWorkingDays', (i) => addWorkingDays(addDays(first, i % 365), 10, calendar)],
    ['workingDaysBetween', (i) => workingDaysBetween(first, addDays(first, i), calendar)],
    ['formatDay', (i) => formatDay(addDays(first, i), 'en-GB', 'weekday')],
    ['formatInstant', (i) => formatInstant(at(i), { locale: 'en-GB', zone })],
    ['holidayCalendar', () => holidayCalendar({ country: 'GB', region: 'ENG', years: [2026, 2027] })],
  ])('%s', (_name, call) => {
    call(0);
    const before = process.cpuUsage();
    for (let i = 0; i < 1000; i += 1) call(i);
    const { user, system } = process.cpuUsage(before);
    expect((user + system) / 1000).toBeLessThan(LIMIT_MS);
  });
});
