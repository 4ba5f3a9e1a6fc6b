import { db } from '@/lib/db/client';
import type { CoverClock } from './cover-sql';
import { type Comparison, compareAll } from './rules/evidence';
import { lotLooks } from './rules/lot-looks';
import { type SpannedTally, tallyBy } from './tallies';

export type LotFigure = {
  id: string;
  code: string;
  part: string;
  partId: string;
  supplier: string;
  tally: SpannedTally;
  /** what it is compared with: other lots of its part, or all other lots where its part has no other */
  against: 'same-part' | 'all';
  comparison: Comparison;
};

/** Every lot that went out in a unit, by part and code, with its returns put down to the part beside those of others. */
export async function readLotFigures(clock: CoverClock): Promise<LotFigure[]> {
  const tallies = await tallyBy('lot', clock);
  const lots = await db.lot.findMany({
    where: { id: { in: tallies.map(({ id }) => id) } },
    orderBy: [{ part: { name: 'asc' } }, { code: 'asc' }],
    select: { id: true, code: true, supplier: true, partId: true, part: { select: { name: true } } },
  });
  const tallyOf = new Map(tallies.map((tally) => [tally.id, tally]));
  const counted = lots.flatMap(({ part, ...lot }) => {
    const tally = tallyOf.get(lot.id);
    return tally ? [{ ...lot, part: part.name, tally }] : [];
  });
  const looks = lotLooks(counted.map(({ partId, tally }) => ({ ...tally, partId })));
  const comparisons = compareAll(looks);
  return counted.flatMap((lot, place) => {
    const comparison = comparisons[place];
    const against = looks[place]?.against;
    return comparison && against ? [{ ...lot, against, comparison }] : [];
  });
}
