import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, compareDays, type Day, day, daysBetween } from '@/lib/calendar/day';
import { coverEnd, lastClaimDay, originalEnd } from '@/lib/warranty/rules/cover';
import { heldBlocks } from '@/lib/warranty/rules/held';
import { renewCover } from '@/lib/warranty/rules/renew';
import { type CoverLine, HELD_RULES, type HeldInterval } from '@/lib/warranty/rules/terms';
import { ENGLAND, someLine, someTerms } from '../made';

const someDay = fc.integer({ min: 0, max: 800 }).map((n) => addDays(day('2026-01-01'), n));
const term = fc.constantFrom('P30D', 'P90D', 'P1M', 'P3M', 'P6M', 'P12M', 'P1Y', 'P2Y', 'P1M1D', 'P4W');
const rule = fc.constantFrom(...HELD_RULES);
const renewedMinimum = fc.constantFrom(null, 'P30D', 'P90D', 'P3M', 'P12M');
const line: fc.Arbitrary<CoverLine> = fc
  .record({ startsOn: someDay, term, renewedUntil: fc.option(someDay), renewedFrom: fc.option(someDay) })
  .map((drawn) => someLine(drawn));
const someStay = fc.tuple(someDay, fc.integer({ min: 0, max: 60 })).map(
  ([from, length]): HeldInterval => ({
    from,
    to: addDays(from, length),
    claimNumber: 'C2222222A',
  }),
);
const stays = fc.array(someStay, { maxLength: 6 });

/** The same month-end clamp can give two starts one end, so a later start may end on the same day, never earlier. */
describe('a later start', () => {
  it('never ends earlier', () => {
    fc.assert(
      fc.property(someDay, term, (startsOn, drawn) => {
        const earlier = originalEnd({ startsOn, term: drawn });
        const later = originalEnd({ startsOn: addDays(startsOn, 1), term: drawn });
        expect(compareDays(later, earlier)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 500 },
    );
  });

  it('ends on the same day only at the end of a month', () => {
    fc.assert(
      fc.property(someDay, term, (startsOn, drawn) => {
        const next = addDays(startsOn, 1);
        const isSame =
          originalEnd({ startsOn, term: drawn }) === originalEnd({ startsOn: next, term: drawn });
        if (isSame) expect(Number(next.slice(8))).toBeGreaterThanOrEqual(29);
      }),
      { numRuns: 500 },
    );
  });
});

describe('the end of cover, whatever happened', () => {
  it('never lies before the original end', () => {
    fc.assert(
      fc.property(line, stays, rule, (drawn, held, heldRule) => {
        expect(compareDays(coverEnd(drawn, held, { heldRule }), originalEnd(drawn))).toBeGreaterThanOrEqual(
          0,
        );
      }),
    );
  });

  it('never moves back when one more stay is recorded', () => {
    fc.assert(
      fc.property(line, stays, someStay, rule, (drawn, held, one, heldRule) => {
        const before = coverEnd(drawn, held, { heldRule });
        const after = coverEnd(drawn, [...held, one], { heldRule });
        expect(compareDays(after, before)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('counts a stay recorded twice once', () => {
    fc.assert(
      fc.property(line, stays, rule, (drawn, held, heldRule) => {
        expect(coverEnd(drawn, [...held, ...held], { heldRule })).toBe(coverEnd(drawn, held, { heldRule }));
      }),
    );
  });

  it('does not depend on the order of the records', () => {
    fc.assert(
      fc.property(line, stays, rule, (drawn, held, heldRule) => {
        expect(coverEnd(drawn, [...held].reverse(), { heldRule })).toBe(coverEnd(drawn, held, { heldRule }));
      }),
    );
  });

  it('leaves as many days of cover in the customer’s hands as the term has', () => {
    fc.assert(
      fc.property(line, stays, (drawn, held) => {
        const end = coverEnd({ ...drawn, renewedUntil: null, renewedFrom: null }, held, {
          heldRule: 'whole-days',
        });
        const promised = daysBetween(drawn.startsOn, originalEnd(drawn));
        const away = heldBlocks(held, drawn.startsOn)
          .filter(({ from }) => compareDays(from, end) <= 0)
          .reduce((sum, { days }) => sum + days, 0);
        expect(daysBetween(drawn.startsOn, end) - away).toBe(promised);
      }),
    );
  });

  it('is never after the last day to open a claim, which is a working day when rolled', () => {
    fc.assert(
      fc.property(someDay, (end) => {
        const last = lastClaimDay(end, someTerms({ rollLastDay: true }), ENGLAND);
        expect(compareDays(last, end)).toBeGreaterThanOrEqual(0);
        expect(ENGLAND.closed.has(last)).toBe(false);
      }),
    );
  });
});

describe('a covered claim', () => {
  type Drawn = { lines: CoverLine[]; touched: string[]; before: HeldInterval[]; now: HeldInterval };
  const drawn: fc.Arbitrary<Drawn> = fc
    .tuple(line, line, line, fc.subarray(['a', 'b', 'c']), stays, someStay)
    .map(([a, b, c, touched, before, now]) => ({
      lines: [
        { ...a, id: 'a' },
        { ...b, id: 'b' },
        { ...c, id: 'c' },
      ],
      touched,
      before,
      now,
    }));

  it('moves no end back, and edits neither start nor term', () => {
    fc.assert(
      fc.property(drawn, rule, renewedMinimum, ({ lines, touched, before, now }, heldRule, minimum) => {
        const renewed = renewCover({
          lines,
          touched,
          heldBefore: before,
          heldNow: now,
          terms: { heldRule, renewedMinimum: minimum },
        });
        renewed.lines.forEach((after, i) => {
          const unrenewed = { renewedUntil: null, renewedFrom: null };
          expect({ ...after, ...unrenewed }).toEqual({ ...lines[i], ...unrenewed });
        });
        for (const { was, now: moved } of renewed.endings) {
          expect(was).not.toBeNull();
          if (was !== null) expect(compareDays(moved, was)).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  it('gives a touched line at least the renewed minimum from the return day', () => {
    fc.assert(
      fc.property(drawn, rule, ({ lines, before, now }, heldRule) => {
        const terms = { heldRule, renewedMinimum: 'P90D' };
        const { endings } = renewCover({
          lines,
          touched: ['a'],
          heldBefore: before,
          heldNow: now,
          terms,
        });
        const end: Day = endings.find(({ lineId }) => lineId === 'a')?.now ?? now.from;
        expect(compareDays(end, addDays(now.to, 90))).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('moves an untouched line by no more than the days of this stay, and stores nothing new on it', () => {
    fc.assert(
      fc.property(drawn, ({ lines, now }) => {
        const plain = lines.map((one) => ({ ...one, renewedUntil: null, renewedFrom: null }));
        const { lines: after, endings } = renewCover({
          lines: plain,
          touched: [],
          heldBefore: [],
          heldNow: now,
          terms: { heldRule: 'whole-days', renewedMinimum: 'P12M' },
        });
        expect(after).toEqual(plain);
        for (const ending of endings) {
          const moved = ending.was === null ? -1 : daysBetween(ending.was, ending.now);
          expect(moved).toBeGreaterThanOrEqual(0);
          expect(moved).toBeLessThanOrEqual(daysBetween(now.from, now.to));
        }
      }),
    );
  });
});
