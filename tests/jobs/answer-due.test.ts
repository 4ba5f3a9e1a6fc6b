import { describe, expect, it } from 'vitest';
import { day, dayInZone } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { answerDue, rulingSince } from '@/lib/jobs/rules/answer-due';

/** England's holidays, and a Monday on which the workshop stays shut. */
const calendar: WorkingCalendar = holidayCalendar({
  country: 'GB',
  region: 'ENG',
  years: [2026, 2027],
  closingDays: [{ day: day('2026-11-16'), name: 'Stocktaking' }],
});
const due = (since: string, today: string, answerDays = 2) =>
  answerDue(day(since), { today: day(today), answerDays, calendar });

describe('until when an answer is promised', () => {
  it.each([
    ['the day itself is not counted', '2026-12-01', '2026-12-01', '2026-12-03', 0],
    ['on its last day it is not late', '2026-12-01', '2026-12-03', '2026-12-03', 0],
    ['the next working day it is a day late', '2026-12-01', '2026-12-04', '2026-12-03', 1],
    ['a weekend between counts neither way', '2026-12-04', '2026-12-08', '2026-12-08', 0],
    ['what is due on a Friday is not late on Saturday', '2026-12-02', '2026-12-05', '2026-12-04', 0],
    ['nor on Sunday', '2026-12-02', '2026-12-06', '2026-12-04', 0],
    ['and is on Monday', '2026-12-02', '2026-12-07', '2026-12-04', 1],
    ['what came on a Sunday is counted from Monday on', '2026-12-06', '2026-12-08', '2026-12-08', 0],
    // Saturday 26 December 2026 is kept on Monday the 28th (Banking and Financial Dealings Act 1971, Schedule 1).
    ['Christmas and its substitute day are left out', '2026-12-24', '2026-12-30', '2026-12-30', 0],
    ['also from what it is over', '2026-12-22', '2026-12-29', '2026-12-24', 1],
    ['a day on which the workshop is shut is left out', '2026-11-13', '2026-11-18', '2026-11-18', 0],
    ['a year’s end is crossed', '2026-12-30', '2027-01-04', '2027-01-04', 0],
  ])('%s', (_name, since, today, on, daysOver) => {
    expect(due(since, today)).toEqual({ on, daysOver });
  });

  it('takes the days the workshop set', () => {
    expect(due('2026-12-01', '2026-12-09', 5)).toEqual({ on: '2026-12-08', daysOver: 1 });
  });

  it.each([
    // Summer time begins on 28 March 2027 at 01:00 UTC and ends on 25 October 2026 (Summer Time Order 2002).
    ['the day of 23 hours, which is Easter Sunday', '2027-03-28T22:30:00Z', '2027-03-31'],
    ['an evening in summer time, which is the next day in London', '2026-10-22T23:30:00Z', '2026-10-27'],
    ['the same hour after it ended', '2026-10-26T23:30:00Z', '2026-10-28'],
  ])('is counted from the day a calendar in the workshop shows: %s', (_name, at, on) => {
    const since = dayInZone(new Date(at), 'Europe/London');
    expect(answerDue(since, { today: since, answerDays: 2, calendar }).on).toBe(on);
  });
});

describe('the day a ruling is counted from', () => {
  const arrivedOn = day('2026-12-01');
  const contestedOn = day('2026-12-10');
  const reopenedOn = day('2026-12-16');

  it.each([
    ['a claim to rule on, its arrival', 'to-rule', null, null, arrivedOn],
    ['a second look, the arrival too: nobody was told yet', 'second-look', null, null, arrivedOn],
    ['a contest, the contest', 'contested', contestedOn, null, contestedOn],
    ['a second look after a contest, the contest', 'second-look', contestedOn, null, contestedOn],
    ['a ruling that the owner took back, that day', 'to-rule', null, reopenedOn, reopenedOn],
    ['one that was contested before, that day too', 'contested', contestedOn, reopenedOn, reopenedOn],
    ['one that was contested since, the contest', 'contested', reopenedOn, contestedOn, reopenedOn],
    ['a ruling that was told, none', 'ruled', contestedOn, reopenedOn, null],
    ['a claim that is over, none', 'closed', null, null, null],
  ] as const)('of %s', (_name, standing, contested, reopened, since) => {
    expect(rulingSince({ standing, arrivedOn, contestedOn: contested, reopenedOn: reopened })).toBe(since);
  });

  it('is none before the unit is here', () => {
    expect(
      rulingSince({ standing: 'to-rule', arrivedOn: null, contestedOn: null, reopenedOn: null }),
    ).toBeNull();
  });
});
