import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import { type QuoteLine, revisionTotals } from '@/lib/quotes/rules/lines';
import {
  owedAfterWithdrawal,
  readWithdrawalRule,
  withdrawalLines,
  withdrawUntil,
} from '@/lib/quotes/rules/withdrawal';

// Holidays from npm date-holidays: 28 December 2026 is the substitute for Boxing Day in England, a working day in Germany.
const england = holidayCalendar({ country: 'GB', region: 'ENG', years: [2026, 2027] });
const germany = holidayCalendar({ country: 'DE', years: [2026, 2027] });

describe('the last day to withdraw', () => {
  // 14 days, the event's day not counted: Directive 2011/83/EU Art. 9(1), (2)(a) [found]; roll-over: Regulation 1182/71
  // Art. 3(4) [found]; the days themselves [computed].
  it.each([
    ['a Tuesday', '2026-12-01', 'eu', england, '2026-12-15'],
    ['a Tuesday under the British regulations', '2026-12-01', 'uk', england, '2026-12-15'],
    ['a Saturday, rolled over Christmas in Germany', '2026-12-12', 'eu', germany, '2026-12-28'],
    ['the same where Boxing Day has a substitute', '2026-12-12', 'eu', england, '2026-12-29'],
    ['a Saturday whose fourteenth day is in the new year', '2026-12-19', 'eu', england, '2027-01-04'],
    // SI 2013/3134 reg. 30 names no roll-over [memory].
    ['a Saturday under the British regulations', '2026-12-12', 'uk', england, '2026-12-26'],
  ] as const)('is counted from %s', (_name, contractOn, rule, calendar, last) => {
    expect(withdrawUntil(day(contractOn), rule, calendar)).toBe(last);
  });

  it('is none where the right does not apply', () => {
    expect(withdrawUntil(day('2026-12-01'), 'off', england)).toBeNull();
    expect(readWithdrawalRule('eu')).toBe('eu');
    expect(readWithdrawalRule('elsewhere')).toBe('off');
  });
});

const QUARTER = {
  price: 12_000,
  minutesDone: 15,
  minutesPlanned: 60,
  hasStartRequest: true,
  isInformed: true,
};

describe('what is owed after a withdrawal', () => {
  it.each([
    // Art. 14(3) [found]: price 120.00, a quarter of the work done -> 30.00 [computed].
    ['a quarter of the price for a quarter of the work', {}, 3000],
    // Art. 14(4)(a) [found]: no express request recorded -> 0.00 [computed].
    ['nothing without the request to start', { hasStartRequest: false }, 0],
    // Art. 14(4)(a) [found]; C-97/22 [found], where the work was done in full.
    ['nothing where the customer was not informed', { isInformed: false }, 0],
    ['nothing even for work done in full, then', { isInformed: false, minutesDone: 60 }, 0],
    ['nothing before work began', { minutesDone: 0 }, 0],
    ['never more than the price', { minutesDone: 90 }, 12_000],
    ['nothing where no work was planned', { minutesPlanned: 0 }, 0],
    // 100.01 x 1/3 = 33.3366…; half up once.
    ['rounded half up once', { price: 10_001, minutesDone: 20 }, 3334],
  ])('is %s', (_name, over, owed) => {
    expect(owedAfterWithdrawal({ ...QUARTER, ...over })).toBe(owed);
  });

  it('refuses broken minutes', () => {
    expect(() => owedAfterWithdrawal({ ...QUARTER, minutesDone: -1 })).toThrow(RangeError);
    expect(() => owedAfterWithdrawal({ ...QUARTER, minutesPlanned: 0.5 })).toThrow(RangeError);
  });
});

describe('the lines of what is owed', () => {
  const line = (amount: number, rateBps: number): QuoteLine => ({
    kind: 'labour',
    description: 'Work',
    amount,
    category: 'S',
    rateBps,
  });
  const { price: _, ...asked } = QUARTER;

  it('keep each tax of the agreed price in proportion', () => {
    const lines = withdrawalLines([line(9000, 2000), line(3000, 500)], { ...asked, isGross: true });
    expect(lines.map(({ amount, rateBps }) => [amount, rateBps])).toEqual([
      [2250, 2000],
      [750, 500],
    ]);
    expect(lines[0]?.description).toBe('Work done until the withdrawal, 15 of 60 minutes');
  });

  it('are one line of nothing where nothing is owed', () => {
    const lines = withdrawalLines([line(9000, 2000), line(3000, 500)], {
      ...asked,
      hasStartRequest: false,
      isGross: true,
    });
    expect(lines.map(({ description, amount }) => [description, amount])).toEqual([
      ['Withdrawn from the contract: nothing to pay', 0],
    ]);
  });

  it('come to what is owed, whatever the lines and the minutes', () => {
    const amount = fc.integer({ min: 0, max: 5_000_000 });
    const some = fc.array(fc.tuple(amount, fc.constantFrom(0, 500, 700, 1900, 2000)), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(
        some,
        fc.nat(200),
        fc.nat(200),
        fc.boolean(),
        (priced, minutesDone, minutesPlanned, isGross) => {
          const lines = priced.map(([each, rateBps]) => line(each, rateBps));
          const { gross } = revisionTotals(lines, isGross);
          const at = { ...asked, minutesDone, minutesPlanned };
          const owed = owedAfterWithdrawal({ ...at, price: gross });
          const written = withdrawalLines(lines, { ...at, isGross });
          expect(revisionTotals(written, true).gross).toBe(owed);
          expect(written.length).toBeGreaterThan(0);
          for (const each of written) expect(each.amount).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
});
