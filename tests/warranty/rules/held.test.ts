import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day } from '@/lib/calendar/day';
import { heldBlocks, heldDays } from '@/lib/warranty/rules/held';
import { HELD_RULES, type HeldInterval } from '@/lib/warranty/rules/terms';
import { stay } from '../made';

const rows = [
  { name: 'nobody held it', stays: [], days: 0 },
  { name: 'handed in and back on the same day', stays: [stay('2026-07-01', '2026-07-01')], days: 0 },
  { name: 'back on the next day', stays: [stay('2026-07-01', '2026-07-02')], days: 1 },
  { name: 'July 1 to 21, hand-in day not counted', stays: [stay('2026-07-01', '2026-07-21')], days: 20 },
  { name: 'over the leap day', stays: [stay('2028-02-28', '2028-03-01')], days: 2 },
  {
    name: 'two stays apart are added',
    stays: [stay('2026-07-01', '2026-07-05'), stay('2026-08-01', '2026-08-03')],
    days: 6,
  },
  {
    name: 'two stays that overlap are counted once',
    stays: [stay('2026-07-01', '2026-07-10'), stay('2026-07-08', '2026-07-12')],
    days: 11,
  },
  {
    name: 'a stay inside another adds nothing',
    stays: [stay('2026-07-01', '2026-07-21'), stay('2026-07-05', '2026-07-06')],
    days: 20,
  },
  {
    name: 'the order of the records does not matter',
    stays: [stay('2026-08-01', '2026-08-03'), stay('2026-07-01', '2026-07-05')],
    days: 6,
  },
];

describe('days out of the customer’s hands', () => {
  it.each(rows)('whole days: $name', ({ stays, days }) => {
    expect(heldDays(stays, 'whole-days')).toBe(days);
  });

  it('are not given back under the rule none', () => {
    expect(heldDays([stay('2026-07-01', '2026-07-21')], 'none')).toBe(0);
  });

  it('six days give nothing back where only stays from seven days on count', () => {
    expect(heldDays([stay('2026-07-01', '2026-07-07')], 'from-seven-days')).toBe(0);
  });

  it('seven days are given back whole where only stays from seven days on count', () => {
    expect(heldDays([stay('2026-07-01', '2026-07-08')], 'from-seven-days')).toBe(7);
  });

  it('two short stays apart do not add up to a long one', () => {
    const stays = [stay('2026-07-01', '2026-07-05'), stay('2026-08-01', '2026-08-06')];
    expect(heldDays(stays, 'from-seven-days')).toBe(0);
  });

  it('a unit sent in again on the day it came back is one long stay', () => {
    const stays = [stay('2026-07-01', '2026-07-05'), stay('2026-07-05', '2026-07-09')];
    expect(heldDays(stays, 'from-seven-days')).toBe(8);
  });

  it('the two-months rule gives no days back, it sets a floor', () => {
    expect(heldDays([stay('2026-07-01', '2026-07-21')], 'two-months-from-return')).toBe(0);
  });

  it('days before a given day are left out', () => {
    expect(heldBlocks([stay('2026-07-01', '2026-07-21')], day('2026-07-11'))).toEqual([
      { from: '2026-07-11', to: '2026-07-21', days: 10 },
    ]);
  });

  it('a stay that ends before it begins is refused by its claim number', () => {
    expect(() => heldDays([stay('2026-07-21', '2026-07-01', 'C7777777K')], 'whole-days')).toThrow(
      /C7777777K/,
    );
  });
});

const someStay = fc
  .tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 40 }))
  .map(([start, length]): HeldInterval => {
    const from = addDays(day('2026-01-01'), start);
    return { from, to: addDays(from, length), claimNumber: 'C2222222A' };
  });

describe('days held, for every set of stays', () => {
  it('are the days of the calendar on which the unit was away, each counted once', () => {
    fc.assert(
      fc.property(fc.array(someStay, { maxLength: 8 }), (stays) => {
        const away = new Set<string>();
        for (const { from, to } of stays)
          for (let d = addDays(from, 1); d <= to; d = addDays(d, 1)) away.add(d);
        expect(heldDays(stays, 'whole-days')).toBe(away.size);
      }),
    );
  });

  it('never become fewer when one more stay is recorded, under any rule', () => {
    fc.assert(
      fc.property(
        fc.array(someStay, { maxLength: 8 }),
        someStay,
        fc.constantFrom(...HELD_RULES),
        (stays, one, rule) => {
          expect(heldDays([...stays, one], rule)).toBeGreaterThanOrEqual(heldDays(stays, rule));
        },
      ),
    );
  });
});
