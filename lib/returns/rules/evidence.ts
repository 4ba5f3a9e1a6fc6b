/*
 * Words of these rules.
 * ours, rest: the returns of one lot, model or pair of hands, and of all others it is compared with.
 * look: one comparison shown on a page, over equal watches (equal-watch.ts). evidence: whether more come back than of the rest,
 * with all looks counted. flag: strong or some evidence; nothing is flagged for being better, since nothing here ranks anybody.
 */
import { fisherExact } from '@/lib/statistics/fisher';
import { holm, holmWith } from '@/lib/statistics/holm';
import { type Interval, shareInterval } from '@/lib/statistics/share-interval';
import type { EqualWatch } from './equal-watch';

export type Evidence = 'strong' | 'some' | 'none-yet' | 'too-young';

export type Look = EqualWatch & { key: string };

export type Change =
  /** the fewest returns among the next units that would make it `to` */
  | { kind: 'returns'; returns: number; of: number; to: Evidence }
  /** not even all of the next units coming back would change it */
  | { kind: 'not-yet'; of: number; to: Evidence }
  /** the fewest next units, none of them coming back, that would take strong evidence down to some */
  | { kind: 'none-of'; of: number };

export type Comparison = Look & {
  interval: Interval | null;
  restInterval: Interval | null;
  p: number;
  /** p with all looks of the page counted (Holm) */
  adjusted: number;
  evidence: Evidence;
  readonly change: Change | null;
};

/** Where evidence begins: adjusted p at most this (common practice, no source). */
export const STRONG = 0.01;
export const SOME = 0.05;
/** Fewer returns than this are never flagged, however unlikely (common practice, no source). */
export const LEAST_RETURNS = 3;
/** How many units ahead it is worked out what would change the verdict. */
export const AHEAD = 20;
const FARTHEST = 2000;

/**
 * Every look of one page: does this lot, model or pair of hands come back more often than the rest? Fisher's exact test,
 * two-sided, with Holm's correction over all looks given, so all that one page shows belong in one call. Flagged from three
 * returns on, where more come back than of the rest and adjusted p is at most 0.05 (some) or 0.01 (strong). In the order
 * given. What is too young to be compared is not tested, so it neither gets a flag nor weakens another look. Refuses broken
 * counts.
 *
 * Alone on its page, 6 of 12 against 10 of 200: p 0.00005, strong; 3 of 12 against 10 of 200: p 0.029, some.
 */
export function compareAll(looks: readonly Look[]): Comparison[] {
  const made = looks.filter(({ days }) => days !== null);
  const ps = made.map(({ ours, rest }) => fisherExact(ours, rest));
  const adjusted = holm(ps);
  const adjustedAs = holmWith(ps);
  const places = new Map(made.map((look, place) => [look, place]));
  return looks.map((look) => {
    const place = places.get(look) ?? made.length;
    const evidence = evidenceOf(look, adjusted[place] ?? 1);
    return {
      ...look,
      interval: shareInterval(look.ours.returned, look.ours.units),
      restInterval: shareInterval(look.rest.returned, look.rest.units),
      p: ps[place] ?? 1,
      adjusted: adjusted[place] ?? 1,
      evidence,
      // Found out when it is read: it takes a dozen more tests, and a page of many looks tells it of few. The other looks
      // stay as they are; only this one is taken again.
      get change() {
        return changeOf(look, evidence, (next) =>
          evidenceOf(next, adjustedAs(place, fisherExact(next.ours, next.rest))),
        );
      },
    };
  });
}

export function isFlagged({ evidence }: { evidence: Evidence }): boolean {
  return evidence === 'strong' || evidence === 'some';
}

/** How many of the looks of a page could be made. */
export function looksMade(looks: readonly Look[]): number {
  return looks.filter(({ days }) => days !== null).length;
}

function evidenceOf({ days, ours, rest }: Look, adjusted: number): Evidence {
  if (days === null) return ours.units > 0 && rest.units > 0 ? 'too-young' : 'none-yet';
  const isMore = ours.returned * rest.units > rest.returned * ours.units;
  if (!isMore || ours.returned < LEAST_RETURNS || adjusted > SOME) return 'none-yet';
  return adjusted <= STRONG ? 'strong' : 'some';
}

function changeOf(look: Look, evidence: Evidence, judge: (next: Look) => Evidence): Change | null {
  if (look.days === null) return null;
  const after = (returned: number, units: number): Evidence =>
    judge({
      ...look,
      ours: { returned: look.ours.returned + returned, units: look.ours.units + units },
    });
  if (evidence === 'strong') {
    const of = fewest(FARTHEST, (units) => after(0, units) !== 'strong');
    return of === null ? null : { kind: 'none-of', of };
  }
  const to = evidence === 'some' ? 'strong' : 'some';
  const returns = fewest(AHEAD, (count) => isAtLeast(after(count, AHEAD), to));
  return returns === null ? { kind: 'not-yet', of: AHEAD, to } : { kind: 'returns', returns, of: AHEAD, to };
}

function isAtLeast(evidence: Evidence, wanted: 'some' | 'strong'): boolean {
  return evidence === 'strong' || evidence === wanted;
}

/** The smallest count from 1 that holds, where all above it hold too; null where none up to the farthest does. */
export function fewest(farthest: number, holds: (count: number) => boolean): number | null {
  if (!holds(farthest)) return null;
  let [no, yes] = [0, farthest];
  while (yes - no > 1) {
    const middle = Math.floor((no + yes) / 2);
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}
