import { rememberFor } from '@/lib/remembered';
import type { CoverClock } from './cover-sql';
import { type LotFigure, readLotFigures } from './lot-figures';
import { isFlagged } from './rules/evidence';

const flagged = rememberFor<LotFigure[]>(10 * 60_000);

/**
 * Lots with some or strong evidence of coming back more often than the rest, for Today. Every certificate is counted for it, so the answer
 * is kept by each process for ten minutes: a ruling may show that much later. The lots' own page counts anew.
 */
export function flaggedLots(clock: CoverClock, now: Date): Promise<LotFigure[]> {
  return flagged.of(clock.today, now, async () =>
    (await readLotFigures(clock)).filter(({ comparison }) => isFlagged(comparison)),
  );
}
