import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, compareDays, day } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import { addWorkingDays, isWorkingDay } from '@/lib/calendar/working';
import {
  fairDay,
  lateReason,
  moveReason,
  promiseAfterLapse,
  promiseAfterWait,
  reopenReason,
} from '@/lib/promise/rules/after-wait';
import { benchDays } from '@/lib/promise/rules/bench-days';

/** England's public holidays: 25 December 2026 is a Friday, the substitute for Boxing Day is Monday 28. */
const calendar = holidayCalendar({ country: 'GB', region: 'ENG', years: [2026, 2027] });
const move = (promisedOn: string, askedOn: string, endedOn: string, furtherDays = 0) =>
  promiseAfterWait(
    { promisedOn: day(promisedOn), askedOn: day(askedOn), endedOn: day(endedOn), furtherDays },
    calendar,
  );

describe('the promise after a question to the customer', () => {
  // Counted by hand on the calendar of December 2026; common practice, no source.
  it.each([
    ['answered the same day, it stands', '2026-12-09', '2026-12-03', '2026-12-03', 0, '2026-12-09', 0],
    [
      'a weekend in between is no wait of its own',
      '2026-12-09',
      '2026-12-04',
      '2026-12-06',
      0,
      '2026-12-09',
      0,
    ],
    [
      'it moves by the working days of the wait',
      '2026-12-09',
      '2026-12-03',
      '2026-12-07',
      0,
      '2026-12-11',
      2,
    ],
    ['and by those of the extra work', '2026-12-09', '2026-12-03', '2026-12-07', 1, '2026-12-14', 2],
    ['extra work alone moves it too', '2026-12-09', '2026-12-03', '2026-12-03', 3, '2026-12-14', 0],
    ['holidays are stepped over on both sides', '2026-12-24', '2026-12-23', '2026-12-29', 0, '2026-12-30', 2],
  ])('%s', (_name, promised, asked, ended, further, on, waitedDays) => {
    expect(move(promised, asked, ended, further)).toEqual({ on, waitedDays });
  });

  it('an answer that seems to come before its question moves nothing', () => {
    expect(move('2026-12-09', '2026-12-07', '2026-12-03')).toEqual({ on: '2026-12-09', waitedDays: 0 });
  });

  it('refuses broken counts', () => {
    expect(() => move('2026-12-09', '2026-12-03', '2026-12-04', 0.5)).toThrow(RangeError);
    expect(() => move('2026-12-09', '2026-12-03', '2026-12-03', -1)).toThrow(RangeError);
  });

  it('leaves as many working days after the answer as were left when it was asked', () => {
    const offset = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(offset, offset, offset, (a, b, c) => {
        const askedOn = addDays(day('2026-11-25'), a);
        const endedOn = addDays(askedOn, b);
        const promisedOn = addWorkingDays(askedOn, c, calendar);
        const { on } = promiseAfterWait({ promisedOn, askedOn, endedOn, furtherDays: 0 }, calendar);
        // From the promise's own way of counting: the wait does not count as bench days, so the same number is kept.
        const bench = { repairId: '', familyId: '', minutes: 0, statedDays: 0, arrivedOn: askedOn };
        const waited = [{ from: askedOn, to: endedOn }];
        expect(benchDays({ ...bench, readyOn: on, waited }, calendar)).toBe(c);
        expect(compareDays(on, promisedOn)).toBeGreaterThanOrEqual(0);
        if (on !== promisedOn) expect(isWorkingDay(on, calendar)).toBe(true);
      }),
    );
  });

  it('is told with its reason', () => {
    expect(moveReason({ waitedDays: 2, furtherDays: 1 })).toBe(
      'The job waited 2 working days for your answer. The extra work takes 1 working day more.',
    );
    expect(moveReason({ waitedDays: 1, furtherDays: 0 })).toBe(
      'The job waited 1 working day for your answer.',
    );
    expect(moveReason({ waitedDays: 0, furtherDays: 0 })).toBe('');
  });

  it('is told of a unit that had been ready', () => {
    expect(reopenReason(1, 0)).toBe('The unit had been ready for 1 working day when it was taken up again.');
  });
});

// Counted by hand; common practice, no source.
describe('the day a unit is judged by once the workshop had moved its promise', () => {
  const wait = (from: string, to: string) => ({ from: day(from), to: day(to) });
  it.each([
    ['is the day before that move', [], '2026-12-10'],
    ['is later by the working days of a wait', [wait('2026-12-11', '2026-12-18')], '2026-12-17'],
    [
      'is later by those of each of two',
      [wait('2026-12-11', '2026-12-18'), wait('2026-12-18', '2026-12-21')],
      '2026-12-18',
    ],
    ['is not made earlier by a move to an earlier day', [wait('2026-12-18', '2026-12-11')], '2026-12-10'],
  ])('%s', (_name, waits, on) => {
    expect(fairDay(day('2026-12-10'), waits, calendar)).toBe(on);
  });
});

describe('the promise after an answer that was written down once its price had lapsed', () => {
  /** Promised for the 9th, asked on Thursday the 3rd, lapsed on Monday the 7th: two working days more, the 11th. */
  const late = (over: Partial<Parameters<typeof promiseAfterLapse>[0]>) =>
    promiseAfterLapse(
      {
        ...{ promisedOn: day('2026-12-11'), lapsedFrom: day('2026-12-09'), askedOn: day('2026-12-03') },
        ...{ heardOn: day('2026-12-04'), today: day('2026-12-08'), furtherDays: 0 },
        ...over,
      },
      calendar,
    );

  // Counted by hand on the calendar of December 2026; common practice, no source.
  it.each<[string, Parameters<typeof late>[0], string, number, boolean]>([
    ['is counted by the day of the answer', {}, '2026-12-10', 1, true],
    ['with the days of the extra work', { furtherDays: 2 }, '2026-12-14', 1, true],
    [
      'stays as the lapse left it for a letter, which is known of only since',
      { heardOn: null },
      '2026-12-11',
      0,
      false,
    ],
    ['and has the extra work of a letter added', { heardOn: null, furtherDays: 1 }, '2026-12-14', 0, false],
    ['stays where that day has come', { today: day('2026-12-10') }, '2026-12-11', 0, false],
    ['stays where the workshop has told another since', { lapsedFrom: null }, '2026-12-11', 0, false],
    ['and has the extra work added then too', { lapsedFrom: null, furtherDays: 1 }, '2026-12-14', 0, false],
  ])('%s', (_name, over, on, waitedDays, isCountedAgain) => {
    expect(late(over)).toEqual({ on, waitedDays, isCountedAgain });
  });

  it('is told with its reason', () => {
    const reason = { waitedDays: 1, furtherDays: 2, isCountedAgain: true };
    expect(lateReason(reason)).toBe(
      'Your answer had come in time: the job waited 1 working day for it. The extra work takes 2 working days more.',
    );
    expect(lateReason({ ...reason, waitedDays: 0, furtherDays: 0 })).toBe(
      'Your answer had come in time: the job did not wait for it.',
    );
    expect(lateReason({ ...reason, waitedDays: 0, isCountedAgain: false })).toBe(
      'The extra work takes 2 working days more.',
    );
    expect(reopenReason(2, 1)).toBe(
      'The unit had been ready for 2 working days when it was taken up again. The extra work takes 1 working day more.',
    );
    expect(reopenReason(0, 1)).toBe('The extra work takes 1 working day more.');
  });

  it('takes off the day a unit is judged by what the lapse had put on it, and never more', () => {
    const lapse = { from: day('2026-12-11'), to: day('2026-12-18') };
    const again = { from: day('2026-12-18'), to: day('2026-12-14') };
    expect(fairDay(day('2026-12-10'), [lapse, again], calendar)).toBe('2026-12-11');
    expect(fairDay(day('2026-12-10'), [again], calendar)).toBe('2026-12-10');
  });
});
