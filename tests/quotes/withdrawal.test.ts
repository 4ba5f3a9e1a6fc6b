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
import { rightSentences } from '@/lib/quotes/rules/withdrawal-text';
import { workUnderRequest } from '@/lib/quotes/rules/work-under-request';

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
  const { price: _, ...quarter } = QUARTER;
  const asked = { ...quarter, isInspected: false };

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

  // An inspection has a price of its own and is given in full before the repair, so that its full price counts, while the rest is
  // owed in proportion: Directive 2011/83/EU Art. 14(3) as the court reads it in C-641/19, SI 2013/3134 reg. 36(4) [both memory];
  // the sums [computed].
  const fee: QuoteLine = { ...line(1800, 2000), kind: 'inspection-fee', description: 'Inspection' };
  const off: QuoteLine = { ...fee, amount: -1800 };
  it.each([
    ['the whole fee once the inspection is finished', [fee], {}, [1800]],
    ['with its tax where the price is kept without', [{ ...fee, amount: 1500 }], { isGross: false }, [1800]],
    ['nothing before that, however long it took', [fee], { isInspected: false }, [0]],
    ['nothing without the wish', [fee], { hasStartRequest: false }, [0]],
    ['nothing where nobody informed of the right', [fee], { isInformed: false }, [0]],
    // 18.00 and a quarter of 72.00.
    ['the fee and the part of the repair beside it', [fee, line(7200, 2000)], {}, [1800, 1800]],
    // 18.00 and a quarter of 90.00 - 18.00: 36.00, and 90.00 for all of it.
    ['no more than the price where it is taken off', [line(9000, 2000), fee, off], {}, [1800, 1800]],
    ['all of that price for all of it', [line(9000, 2000), fee, off], { minutesDone: 60 }, [1800, 7200]],
    ['the fee alone where it is more than the repair', [line(900, 2000), fee, off], {}, [1800]],
    // Nothing is owed for the inspection, so that nothing is taken off either: a quarter of 90.00.
    ['the repair alone otherwise', [line(9000, 2000), fee, off], { isInspected: false }, [2250]],
  ])('of a price with an inspection are %s', (_name, lines, over, amounts) => {
    const owed = withdrawalLines(lines, { ...asked, isGross: true, isInspected: true, ...over });
    expect(owed.map(({ amount }) => amount)).toEqual(amounts);
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

describe('the work done at the wish for an early start', () => {
  const at = (hour: number) => new Date(Date.UTC(2026, 11, 3, hour));
  const moved = (fromStage: string, toStage: string, hour: number) => ({ fromStage, toStage, at: at(hour) });
  const FEE = [{ kind: 'inspection-fee', amount: 1800 }];
  const events = [
    moved('arrived', 'assessing', 9),
    moved('assessing', 'awaiting-approval', 11),
    moved('awaiting-approval', 'on-bench', 14),
  ];
  const work = [
    { at: at(10), minutes: 15 },
    { at: at(15), minutes: 20 },
  ];
  const all = { requestedAt: at(8), agreed: FEE, events, findings: [], work };
  it.each([
    // Art. 14(4)(a), reg. 36(6)(b) [memory]: nothing for what was not asked for.
    ['is none without it', { requestedAt: null }, { minutes: 0, isInspected: false }],
    ['leaves out what was done before it', { requestedAt: at(12) }, { minutes: 20, isInspected: false }],
    ['keeps an inspection apart from the repair', {}, { minutes: 20, isInspected: true }],
    ['is all of it where no inspection was agreed to', { agreed: [] }, { minutes: 35, isInspected: false }],
    [
      'has the inspection finished with its finding',
      { events: events.slice(0, 1), findings: [{ at: at(10) }] },
      { minutes: 0, isInspected: true },
    ],
    [
      'does not take what was seen at the arrival for one',
      { events: events.slice(0, 1), findings: [{ at: at(8) }] },
      { minutes: 0, isInspected: false },
    ],
  ])('%s', (_name, over, done) => {
    expect(workUnderRequest({ ...all, ...over })).toEqual(done);
  });
});

// What is paid in full and apart must be agreed to as such (CJEU C-641/19 [memory]).
it.each([null, true, false])(
  'the right names the price of an inspection where it can be owed: asked %s',
  (isStartAsked) => {
    const told = (inspectionFee: string | null) =>
      rightSentences({ until: 'Friday', isStartAsked, inspectionFee }).join(' ');
    expect(told('£18.00').includes('you pay its price of £18.00 in full')).toBe(isStartAsked !== false);
    expect(told(null)).not.toContain('inspection');
  },
);
