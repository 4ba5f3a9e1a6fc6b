import { type Day, maxDay } from '@/lib/calendar/day';
import { addPeriod } from '@/lib/calendar/period';
import { coverEnd, renewedEnd } from './cover';
import { refuseTwins } from './first-cover';
import type { CoverLine, HeldInterval, PolicyTerms } from './terms';

/** A claim does not end sooner than this after the return, for the fault that was put right (BGB 475e(4)). */
export const FLOOR_AFTER_RETURN = 'P2M';

export type LineEnding = { lineId: string; was: Day | null; now: Day };

export type RenewedCover = {
  lines: CoverLine[];
  /** How each line's end moved; `was` is null for a line that is new. */
  endings: LineEnding[];
  /** True when a stored line differs, so that revision n+1 must be issued even after a claim that was not covered. */
  hasChanged: boolean;
};

/**
 * The cover lines of revision n+1, when a unit goes back after a claim.
 *
 * A touched line (its work was done again, its part replaced) runs on for the longer of what remains, with the days given
 * back, and the renewed minimum counted from the return day. An untouched line only gets the days given back. `added` are
 * lines for work or parts that the old revision did not have. Start and term of a line are never edited and no end ever
 * moves back. With `touched` empty it also serves a claim that was not covered. Refuses a touched id that no line has.
 *
 * Example: P12M from 3 December 2026, renewed minimum P90D, held 10 to 20 November 2027: the touched line ends on
 * 18 February 2028 (90 days from the return), an untouched one on 13 December 2027 (10 days later than before).
 */
export function renewCover(o: {
  lines: readonly CoverLine[];
  touched: readonly string[];
  added?: readonly CoverLine[];
  /** Earlier stays of the same certificate chain. */
  heldBefore: readonly HeldInterval[];
  /** The stay that ends now; its `to` is the return day. */
  heldNow: HeldInterval;
  terms: Pick<PolicyTerms, 'heldRule' | 'renewedMinimum'>;
}): RenewedCover {
  const { lines, touched, added = [], heldBefore, heldNow, terms } = o;
  const unknown = touched.find((id) => !lines.some((line) => line.id === id));
  if (unknown !== undefined) throw new RangeError(`No cover line has the id ${unknown}`);
  refuseTwins([...lines, ...added]);

  const held = [...heldBefore, heldNow];
  const floor = floorAfterReturn(heldNow.to, terms);
  const renewed = lines.map((line) => {
    const kept = renewedEnd(line, held, terms);
    const renewedUntil = touched.includes(line.id) ? latest(kept, floor) : kept;
    // Days up to this return are in it now; those of a later stay move it from here.
    return { ...line, renewedUntil, ...(renewedUntil !== null && { renewedFrom: heldNow.to }) };
  });
  const next = [...renewed, ...added];
  return {
    lines: next,
    endings: next.map((line) => {
      const before = lines.find(({ id }) => id === line.id);
      return {
        lineId: line.id,
        was: before ? coverEnd(before, heldBefore, terms) : null,
        now: coverEnd(line, held, terms),
      };
    }),
    hasChanged: added.length > 0 || renewed.some((line, i) => line.renewedUntil !== lines[i]?.renewedUntil),
  };
}

function floorAfterReturn(
  returnedOn: Day,
  terms: Pick<PolicyTerms, 'heldRule' | 'renewedMinimum'>,
): Day | null {
  const byMinimum = terms.renewedMinimum === null ? null : addPeriod(returnedOn, terms.renewedMinimum);
  const byLaw =
    terms.heldRule === 'two-months-from-return' ? addPeriod(returnedOn, FLOOR_AFTER_RETURN) : null;
  return latest(byMinimum, byLaw);
}

function latest(a: Day | null, b: Day | null): Day | null {
  if (a === null) return b;
  return b === null ? a : maxDay(a, b);
}
