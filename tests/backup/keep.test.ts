import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outdated } from '@/lib/backup/rules/keep';
import { nameOf, readName } from '@/lib/backup/rules/names';
import { dueTimes, isDue, standingOf } from '@/lib/backup/rules/night';
import { sizeInWords } from '@/lib/backup/rules/size';

const zone = 'Europe/London';
const at = (text: string) => new Date(text);
const HOUR = 3_600_000;
const DAY = 24 * HOUR;

describe('which backups are kept', () => {
  const now = at('2026-11-25T12:00:00Z');
  const nights = Array.from(
    { length: 400 },
    (_, n) => new Date(at('2026-11-25T03:00:00Z').getTime() - n * DAY),
  );
  const kept = (keep: Parameters<typeof outdated>[1], made = nights) => {
    const gone = new Set(outdated(made, keep, { zone, now }));
    return made.filter((each) => !gone.has(each)).map((each) => each.toISOString().slice(0, 10));
  };

  test('seven days, four weeks and six months of a year of nights', () => {
    expect(kept({ days: 7, weeks: 4, months: 6 })).toEqual([
      ...['2026-11-25', '2026-11-24', '2026-11-23', '2026-11-22', '2026-11-21', '2026-11-20', '2026-11-19'],
      // Sundays, the last of the ISO weeks 47, 46 and 45; the newest of week 48 is today's.
      ...['2026-11-15', '2026-11-08'],
      // The last of each month; November's is today's.
      ...['2026-10-31', '2026-09-30', '2026-08-31', '2026-07-31', '2026-06-30'],
    ]);
  });

  test('of two in one day the later stays', () => {
    const made = [at('2026-11-24T03:00:00Z'), at('2026-11-24T15:00:00Z'), at('2026-11-25T03:00:00Z')];
    expect(outdated(made, { days: 7, weeks: 0, months: 0 }, { zone, now })).toEqual([made[0]]);
  });

  test('a day is one of the workshop: 23:30 UTC in summer is the next day in London', () => {
    const made = [at('2026-07-01T22:30:00Z'), at('2026-07-01T23:30:00Z')];
    const keep = { days: 7, weeks: 0, months: 0 };
    expect(outdated(made, keep, { zone, now })).toEqual([]);
    expect(outdated(made, keep, { zone: 'UTC', now })).toEqual([made[0]]);
  });

  test('days without a backup are not counted: after a shut month nothing is lost', () => {
    const made = nights.slice(30, 37);
    expect(kept({ days: 7, weeks: 0, months: 0 }, made)).toHaveLength(7);
  });

  test('the newest stays even when nothing is to be kept, and one from the future is left alone', () => {
    const ahead = at('2027-11-25T03:00:00Z');
    const made = [ahead, ...nights.slice(0, 3)];
    expect(outdated(made, { days: 0, weeks: 0, months: 0 }, { zone, now })).toEqual(nights.slice(1, 3));
  });

  test('whatever was made, no more stay than were asked for, the newest always, and a second look removes nothing', () => {
    const count = fc.integer({ min: 0, max: 9 });
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 800 * DAY }), { maxLength: 60 }),
        fc.record({ days: count, weeks: count, months: count }),
        (ages, keep) => {
          const made = [...new Set(ages)].map((age) => new Date(now.getTime() - age));
          const gone = new Set(outdated(made, keep, { zone, now }));
          const stay = made.filter((each) => !gone.has(each));
          const newest = made.toSorted((a, b) => b.getTime() - a.getTime())[0];
          if (newest) expect(stay).toContain(newest);
          expect(stay.length).toBeLessThanOrEqual(Math.max(1, keep.days + keep.weeks + keep.months));
          expect(outdated(stay, keep, { zone, now })).toEqual([]);
        },
      ),
    );
  });
});

describe('when a backup is due', () => {
  const night = { at: '03:00', zone };

  test.each([
    ['before three', '2026-11-25T02:59:59Z', '2026-11-24T03:00:00Z', '2026-11-25T03:00:00Z'],
    ['at three', '2026-11-25T03:00:00Z', '2026-11-25T03:00:00Z', '2026-11-26T03:00:00Z'],
    ['in summer', '2026-07-01T12:00:00Z', '2026-07-01T02:00:00Z', '2026-07-02T02:00:00Z'],
    [
      'over the change to summer time',
      '2026-03-28T12:00:00Z',
      '2026-03-28T03:00:00Z',
      '2026-03-29T02:00:00Z',
    ],
    ['over the change back', '2026-10-24T12:00:00Z', '2026-10-24T02:00:00Z', '2026-10-25T03:00:00Z'],
  ])('%s', (_when, now, last, next) => {
    expect(dueTimes(at(now), night)).toEqual({ last: at(last), next: at(next) });
  });

  test('an hour that the clock skips is the hour after it; of one that comes twice the first counts', () => {
    // Clocks in London go forward at 01:00 UTC on 29 March 2026 and back at 01:00 UTC on 25 October (tz database).
    const early = { at: '01:30', zone };
    expect(dueTimes(at('2026-03-29T00:00:00Z'), early).next).toEqual(at('2026-03-29T01:30:00Z'));
    expect(dueTimes(at('2026-10-25T00:00:00Z'), early).next).toEqual(at('2026-10-25T00:30:00Z'));
  });

  test('every night of a year has one hour, a day of 23 to 25 hours after the one before', () => {
    for (const time of ['00:00', '01:30', '02:30', '03:00', '23:59']) {
      let due = dueTimes(at('2026-01-01T12:00:00Z'), { at: time, zone }).next;
      for (let n = 0; n < 365; n += 1) {
        const { last, next } = dueTimes(due, { at: time, zone });
        expect(last).toEqual(due);
        expect(next.getTime() - due.getTime()).toBeGreaterThanOrEqual(23 * HOUR);
        expect(next.getTime() - due.getTime()).toBeLessThanOrEqual(25 * HOUR);
        due = next;
      }
    }
  });

  test('it is made once, made up for after a night slept through, and not put off by one from the future', () => {
    const now = at('2026-11-25T10:00:00Z');
    expect(isDue(now, [], night)).toBe(true);
    expect(isDue(now, [at('2026-11-25T03:00:10Z')], night)).toBe(false);
    expect(isDue(now, [at('2026-11-24T03:00:10Z')], night)).toBe(true);
    expect(isDue(now, [at('2027-11-25T03:00:10Z')], night)).toBe(true);
    // A clock set back by a quarter of an hour after the backup makes no second one.
    expect(isDue(at('2026-11-25T03:00:00Z'), [at('2026-11-25T03:15:00Z')], night)).toBe(false);
  });

  test.each([
    ['made this night', '2026-11-25T10:00:00Z', ['2026-11-25T03:00:10Z'], '2026-01-01T00:00:00Z', 'fine'],
    [
      'the hours of the night are not over',
      '2026-11-25T05:00:00Z',
      ['2026-11-24T03:00:10Z'],
      '2026-01-01T00:00:00Z',
      'fine',
    ],
    [
      'none since yesterday',
      '2026-11-25T10:00:00Z',
      ['2026-11-24T03:00:10Z'],
      '2026-01-01T00:00:00Z',
      'missed',
    ],
    ['never one', '2026-11-25T10:00:00Z', [], '2026-01-01T00:00:00Z', 'missed'],
    ['opened this morning', '2026-11-25T10:00:00Z', [], '2026-11-25T08:00:00Z', 'none-yet'],
    ['nobody has an account', '2026-11-25T10:00:00Z', [], null, 'none-yet'],
    [
      'only one from the future',
      '2026-11-25T10:00:00Z',
      ['2027-11-24T03:00:10Z'],
      '2026-01-01T00:00:00Z',
      'missed',
    ],
  ])('standing: %s', (_what, now, made, openedAt, standing) => {
    expect(
      standingOf({
        now: at(now),
        made: made.map(at),
        night,
        openedAt: openedAt === null ? null : at(openedAt),
      }),
    ).toBe(standing);
  });
});

test('a name says when and how a backup was made, and other names say nothing', () => {
  const madeAt = at('2026-11-25T03:00:04.000Z');
  expect(nameOf(madeAt, true)).toBe('mendpost-night-2026-11-25T030004Z.tar');
  for (const isNightly of [true, false]) {
    const file = nameOf(madeAt, isNightly);
    expect(readName(file)).toEqual({ file, madeAt, isNightly });
  }
  for (const other of [
    '',
    'notes.txt',
    'mendpost-2026-11-25T030004Z.tar.part',
    'mendpost-2026-13-45T990004Z.tar',
  ]) {
    expect(readName(other)).toBeNull();
  }
});

test.each([
  [0, '0 kB'],
  [1536, '2 kB'],
  [999_999, '1000 kB'],
  [9_492_480, '9.5 MB'],
  [12_340_000_000, '12.3 GB'],
])('%i bytes are %s', (bytes, words) => {
  expect(sizeInWords(bytes)).toBe(words);
});
