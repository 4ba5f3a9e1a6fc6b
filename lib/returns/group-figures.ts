import type { CoverClock } from './cover-sql';
import type { Grouping } from './groupings';
import { readLotFigures } from './lot-figures';
import { namesOf } from './names';
import { equalWatch, together, without } from './rules/equal-watch';
import { type Comparison, compareAll } from './rules/evidence';
import { type SpannedTally, tallyBy } from './tallies';

export type GroupFigure = { id: string; name: string; tally: SpannedTally; comparison: Comparison };

/**
 * Everything of a grouping that was sent back at least once, by name and never by share, each beside the others over
 * equal watches (rules/equal-watch.ts). Lots are compared with their mates (rules/lot-looks.ts), all else with all others.
 */
export async function readGroupFigures(grouping: Grouping, clock: CoverClock): Promise<GroupFigure[]> {
  if (grouping === 'lot') {
    const lots = await readLotFigures(clock);
    return lots.map(({ id, code, part, tally, comparison }) => ({
      id,
      name: `${code}, ${part}`,
      tally,
      comparison,
    }));
  }
  const [tallies, names] = await Promise.all([tallyBy(grouping, clock), namesOf(grouping)]);
  const all = together(tallies);
  const named = tallies
    .map((tally) => ({ id: tally.id, name: names.get(tally.id) ?? 'no longer known', tally }))
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  const comparisons = compareAll(
    named.map(({ id, tally }) => ({
      key: id,
      ...equalWatch(tally, without(all, tally)),
    })),
  );
  return named.flatMap((figure, place) => {
    const comparison = comparisons[place];
    return comparison ? [{ ...figure, comparison }] : [];
  });
}
