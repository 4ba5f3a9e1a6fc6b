import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day } from '@/lib/calendar/day';
import { isWorkingDay, type WorkingCalendar } from '@/lib/calendar/working';
import { benchLoad } from '@/lib/jobs/rules/bench-load';
import { type OpenPromise, promisesToMove } from '@/lib/promise/rules/promises-to-move';

/** A Wednesday; nobody is here from Thursday 24 December to Monday 4 January. */
const TODAY = day('2026-12-23');
const CLOSED: WorkingCalendar = {
  weekend: [6, 7],
  closed: new Map(
    Array.from({ length: 12 }, (_, n): [string, string] => [addDays(day('2026-12-24'), n), 'Stocktaking']),
  ),
};

const promise = (
  promisedOn: string,
  minutesLeft = 60,
  arrivedOn = '2026-12-14',
  partOn: string | null = null,
): OpenPromise => ({
  partOn: partOn === null ? null : day(partOn),
  promisedOn: day(promisedOn),
  minutesLeft,
  arrivedOn: day(arrivedOn),
});

const judge = (open: OpenPromise[], today = TODAY) =>
  promisesToMove(open, { today, capacityMinutesDay: 360, calendar: CLOSED }).map(({ promise, why, to }) => [
    promise.promisedOn,
    why,
    to,
  ]);

describe('which promises are to be moved, and to when', () => {
  it.each<[string, OpenPromise[], string[][]]>([
    ['one that the bench reaches', [promise('2026-12-23')], []],
    [
      'one for a closed day goes to the first open one',
      [promise('2026-12-28')],
      [['2026-12-28', 'closed', '2027-01-05']],
    ],
    ['one for a weekend day too', [promise('2027-01-09')], [['2027-01-09', 'closed', '2027-01-11']]],
    [
      'one that is late is said for tomorrow at the earliest',
      [promise('2026-12-22')],
      [['2026-12-22', 'late', '2027-01-05']],
    ],
    [
      'what was promised first has the bench first',
      [promise('2027-01-05', 300), promise('2026-12-23', 360)],
      [],
    ],
    [
      'one that finds the bench full',
      [promise('2026-12-23', 360), promise('2026-12-23', 60, '2026-12-15')],
      [['2026-12-23', 'no-room', '2027-01-05']],
    ],
    [
      'those of a closed week come one after the other',
      [promise('2026-12-28', 300), promise('2026-12-29', 300), promise('2026-12-30', 300)],
      [
        ['2026-12-28', 'closed', '2027-01-05'],
        ['2026-12-29', 'closed', '2027-01-05'],
        ['2026-12-30', 'closed', '2027-01-06'],
      ],
    ],
    [
      'and push what was promised for after it',
      [promise('2026-12-28', 700), promise('2027-01-05', 300)],
      [
        ['2026-12-28', 'closed', '2027-01-05'],
        ['2027-01-05', 'no-room', '2027-01-06'],
      ],
    ],
    [
      'one whose part comes on the day itself stands',
      [promise('2027-01-06', 60, '2026-12-14', '2027-01-06')],
      [],
    ],
    [
      'one whose part comes after it is said for the working day after the part',
      [promise('2026-12-23', 60, '2026-12-14', '2027-01-06')],
      [['2026-12-23', 'part-later', '2027-01-07']],
    ],
    ['one whose part comes by then', [promise('2027-01-07', 60, '2026-12-14', '2027-01-06')], []],
    [
      'a late one waits for its part too',
      [promise('2026-12-22', 60, '2026-12-14', '2027-01-08')],
      [['2026-12-22', 'late', '2027-01-11']],
    ],
    [
      'a part that should have come says nothing more',
      [promise('2026-12-22', 60, '2026-12-14', '2026-12-18')],
      [['2026-12-22', 'late', '2027-01-05']],
    ],
    ['work that is done but for its proof', [promise('2026-12-23', 0)], []],
  ])('%s', (_name, open, expected) => {
    expect(judge(open)).toEqual(expected);
  });

  it('refuses a bench without capacity', () => {
    expect(() => promisesToMove([], { today: TODAY, capacityMinutesDay: 0, calendar: CLOSED })).toThrow(
      RangeError,
    );
  });

  it('leaves a bench that lacks no hours, and no promise late or on a closed day, once each is moved', () => {
    const open = fc.array(
      fc.record({ ahead: fc.integer({ min: -5, max: 25 }), minutes: fc.integer({ min: 0, max: 900 }) }),
      { maxLength: 12 },
    );
    // What nobody was promised, since its price is not agreed.
    const walkedIn = fc.array(fc.integer({ min: 0, max: 900 }), { maxLength: 3 });
    fc.assert(
      fc.property(open, walkedIn, (drawn, unpromised) => {
        const before = drawn.map(({ ahead, minutes }) => promise(addDays(TODAY, ahead), minutes));
        const moved = new Map(
          promisesToMove(before, { today: TODAY, capacityMinutesDay: 360, calendar: CLOSED }).map((each) => [
            each.promise,
            each.to,
          ]),
        );
        const after = before.map((each) => ({ ...each, promisedOn: moved.get(each) ?? each.promisedOn }));
        const settings = { today: TODAY, capacityMinutesDay: 360, calendar: CLOSED };
        const work = [
          ...after.map(({ promisedOn, minutesLeft }) => ({ promisedOn, minutes: minutesLeft })),
          ...unpromised.map((minutes) => ({ promisedOn: null, minutes })),
        ];
        expect(benchLoad(work, { ...settings, days: 30 }).short).toBeNull();
        for (const { promisedOn } of after) {
          expect(promisedOn >= TODAY).toBe(true);
          expect(isWorkingDay(promisedOn, CLOSED)).toBe(true);
        }
      }),
    );
  });
});
