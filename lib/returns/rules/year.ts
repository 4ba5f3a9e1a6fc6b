/*
 * Words of these rules.
 * year: the last 365 days. ended: units whose first cover was as long as the term that a reserve is for and ran out in the year.
 * A reserve is for the whole cover of a unit, so it is judged by those alone, with their own claims, whenever they were opened:
 * what went on claims in a year went on units of other years too, and a unit of this month has hardly begun to cost.
 */
import { ENOUGH_WATCHED } from './repair-worth';
import type { Reserve } from './reserve';

/** Claims and their costs; `uncosted` of them have no recorded cost yet, so that what was spent may still rise. Minor units. */
export type Spent = { spentMinor: number; uncosted: number };

/** Units whose first cover, so many days long, ran out in the year, with all of their own claims. */
export type EndedCover = Spent & { days: number; units: number };

type Ended = Spent & {
  units: number;
  reserveMinor: number;
  upperMinor: number;
  /** null where fewer than twelve covers ended: a few units prove nothing of a reserve */
  verdict: 'within' | 'above-reserve' | 'above-upper' | null;
};

export type YearAgainstReserve = Spent & {
  /** units sent back in the year, and what they have to carry */
  sent: number;
  reserveMinor: number;
  upperMinor: number;
  ended: Ended;
};

/** Months differ by up to three days, and a last day may be moved past a weekend and a holiday. */
const ABOUT_AS_LONG = 7;

/** Of covers that ended, those about as long as a term: what a reserve for that term can be judged by. */
export function endedOfTerm(covers: readonly EndedCover[], termDays: number): Spent & { units: number } {
  const such = covers.filter(({ days }) => Math.abs(days - termDays) <= ABOUT_AS_LONG);
  const sum = (key: 'units' | 'spentMinor' | 'uncosted') => such.reduce((all, cover) => all + cover[key], 0);
  return { units: sum('units'), spentMinor: sum('spentMinor'), uncosted: sum('uncosted') };
}

/**
 * A year's reserve beside what was spent in it, and a verdict by the units whose cover ran out in it.
 *
 * 40 sent at 100, upper 208: they have to carry 4,000, 8,320 at most. 25 ended, 3,000 spent on them: above their reserve of 2,500,
 * below 5,200.
 */
export function yearAgainstReserve(
  o: Spent & {
    sent: number;
    reserve: Pick<Reserve, 'reserveMinor' | 'upperMinor'>;
    ended: Spent & { units: number };
  },
): YearAgainstReserve {
  const carried = (units: number) => ({
    reserveMinor: units * o.reserve.reserveMinor,
    upperMinor: units * o.reserve.upperMinor,
  });
  const ended = { ...o.ended, ...carried(o.ended.units) };
  return {
    sent: o.sent,
    ...carried(o.sent),
    spentMinor: o.spentMinor,
    uncosted: o.uncosted,
    ended: { ...ended, verdict: ended.units < ENOUGH_WATCHED ? null : verdictOf(ended) },
  };
}

function verdictOf({ spentMinor, reserveMinor, upperMinor }: Omit<Ended, 'verdict'>): Ended['verdict'] {
  if (spentMinor <= reserveMinor) return 'within';
  return spentMinor <= upperMinor ? 'above-reserve' : 'above-upper';
}
