/*
 * Older things have had more time to come back. Two sides are compared over equal watches only: units that could be watched
 * for so many days, and their returns within those days.
 */
import type { Counted } from '@/lib/statistics/fisher';

/** Days that two sides may be compared over, shortest first: a fortnight and usual terms of cover (common practice, no source). */
export const SPANS = [14, 30, 60, 90, 120, 150, 180, 270, 360] as const;
/** What could not be watched for the shortest of them is too young. */
export const SHORTEST: number = SPANS[0];

/** All units of one side with their returns so far and, for each of SPANS, those that could be watched so long. */
export type Watched = Counted & { spans: readonly Counted[] };

export type EqualWatch = {
  /** units watched so long, and their returns within it; null where there is no such span, and both sides are whole */
  days: number | null;
  ours: Counted;
  rest: Counted;
};

/**
 * Both sides over the longest of SPANS for which at least two of three of our units could be watched, and of the rest at least
 * two thirds as many as the smaller side has. So most of our units count, what fails in its first weeks is not told by the
 * oldest few, and nothing that came back has a say in the choice: Fisher's level holds for whatever span comes out. A unit can
 * be watched until its first cover ends, so what has cover of 30 days is compared over 30. Two thirds: where units go out
 * steadily, half of them would carry most days, and where all have gone out, nearly all (common practice, no source).
 *
 * Forty units of a year ago beside sixty of last week: too young. Beside sixty of a hundred days ago: 90 days.
 */
export function equalWatch(ours: Watched, rest: Watched): EqualWatch {
  const smaller = Math.min(ours.units, rest.units);
  for (let place = SPANS.length - 1; place >= 0; place -= 1) {
    const [a, b] = [ours.spans[place], rest.spans[place]];
    if (!a || !b || smaller === 0) continue;
    if (a.units * 3 >= ours.units * 2 && b.units * 3 >= smaller * 2)
      return { days: SPANS[place] ?? SHORTEST, ours: a, rest: b };
  }
  return { days: null, ours: whole(ours), rest: whole(rest) };
}

export function together(sides: readonly Watched[]): Watched {
  return sides.reduce<Watched>((sum, side) => combine(sum, side, 1), NONE);
}

export function without(all: Watched, side: Watched): Watched {
  return combine(all, side, -1);
}

const NONE: Watched = { returned: 0, units: 0, spans: SPANS.map(() => ({ returned: 0, units: 0 })) };

function combine(a: Watched, b: Watched, sign: 1 | -1): Watched {
  const add = (one: Counted, other: Counted | undefined): Counted => ({
    returned: one.returned + sign * (other?.returned ?? 0),
    units: one.units + sign * (other?.units ?? 0),
  });
  return { ...add(a, b), spans: a.spans.map((span, place) => add(span, b.spans[place])) };
}

function whole({ returned, units }: Watched): Counted {
  return { returned, units };
}
