import Holidays from 'date-holidays';
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import { closesOn, isDelivered } from '@/lib/jobs/rules/closing';

const CLOSED = '2026-08-24';
const england = holidayCalendar({
  country: 'GB',
  region: 'ENG',
  years: [2026, 2027],
  closingDays: [{ day: day(CLOSED), name: 'Stocktaking' }],
});

// Counted by hand on the calendar of 2026 and 2027. England rests on 25 and 28 December, on 1 January and on 31 August 2026
// (gov.uk bank holidays, from memory).
test.each([
  ['collected or at once: two weeks', '2026-11-25', 0, '2026-12-09'],
  ['a week at most: two weeks', '2026-11-25', 5, '2026-12-09'],
  ['the last day on the way is the fourteenth, and is over first', '2026-11-25', 10, '2026-12-10'],
  ['four weeks without a holiday', '2026-11-25', 20, '2026-12-24'],
  ['four weeks over Christmas and New Year', '2026-12-18', 20, '2027-01-21'],
  ['a weekend after the last day is not waited for', '2026-11-20', 15, '2026-12-12'],
  ['the workshop’s own closing day and a bank holiday', '2026-08-21', 10, '2026-09-09'],
])('a unit that was sent back counts as delivered: %s', (_name, sent, transitDays, expected) => {
  expect(closesOn({ sentOn: day(sent), transitDays }, england)).toBe(expected);
});

test('it does from that day on, and not on the one before', () => {
  const sent = { sentOn: day('2026-12-18'), transitDays: 20 };
  const on = (today: string) => isDelivered(sent, { today: day(today), calendar: england });
  expect([on('2027-01-20'), on('2027-01-21'), on('2027-03-01')]).toEqual([false, true, true]);
});

// By another way: the days are walked one by one with Temporal, and the holidays are asked of date-holidays itself.
test('on any day, with any longest way, it is what walking through the days gives', () => {
  const source = new Holidays('GB', 'ENG');
  const rests = new Set([
    CLOSED,
    ...[2026, 2027].flatMap((year) =>
      source.getHolidays(year).flatMap(({ type, date }) => (type === 'public' ? [date.slice(0, 10)] : [])),
    ),
  ]);
  const delivered = (sent: string, transitDays: number) => {
    let today = Temporal.PlainDate.from(sent);
    for (let gone = 0, worked = 0; ; gone += 1) {
      if (gone >= 14 && worked >= transitDays) return today.toString();
      // Only a day that is over counts.
      if (gone > 0 && today.dayOfWeek < 6 && !rests.has(today.toString())) worked += 1;
      today = today.add({ days: 1 });
    }
  };
  const sent = fc
    .integer({ min: 0, max: 640 })
    .map((n) => Temporal.PlainDate.from('2026-01-01').add({ days: n }).toString());
  fc.assert(
    fc.property(sent, fc.integer({ min: 0, max: 60 }), (from, transitDays) => {
      expect(closesOn({ sentOn: day(from), transitDays }, england)).toBe(delivered(from, transitDays));
    }),
    { numRuns: 300 },
  );
});
