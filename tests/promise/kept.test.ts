import { expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { byMonth, judgedPromise } from '@/lib/promise/rules/kept';

const today = day('2026-11-25');
const november = { month: '2026-11', promises: 1, kept: 0, notReady: 0 };

it.each([
  ['ready on its day is kept', '2026-11-16', '2026-11-16', { ...november, kept: 1 }],
  ['ready the day after is not', '2026-11-16', '2026-11-17', november],
  ['not ready is neither kept nor over', '2026-11-24', null, { ...november, notReady: 1 }],
  ['today has not passed', '2026-11-25', '2026-11-20', null],
])('%s', (_name, on, readyOn, expected) => {
  expect(judgedPromise(day(on), readyOn === null ? null : day(readyOn), today)).toEqual(expected);
});

it('adds the counts of a month, the earliest month first', () => {
  const october = { month: '2026-10', promises: 2, kept: 1, notReady: 1 };
  expect(byMonth([{ ...november, kept: 1 }, october, november])).toEqual([
    october,
    { month: '2026-11', promises: 2, kept: 1, notReady: 0 },
  ]);
});
