import type { CoverClock } from './cover-sql';
import { type LotFigure, readLotFigures } from './lot-figures';
import { isFlagged } from './rules/evidence';

const KEEP_MS = 10 * 60_000;
let kept: { key: string; until: number; lots: Promise<LotFigure[]> } | undefined;

/**
 * Lots with some or strong evidence of coming back more often than the rest, for Today. Every certificate is counted for it, so the answer
 * is kept by each process for ten minutes: a ruling may show that much later. The lots' own page counts anew.
 */
export async function flaggedLots(clock: CoverClock, now: Date): Promise<LotFigure[]> {
  if (!kept || kept.key !== clock.today || kept.until <= now.getTime()) {
    kept = { key: clock.today, until: now.getTime() + KEEP_MS, lots: readFlagged(clock) };
    // What failed is asked again by the next page.
    kept.lots.catch(() => {
      kept = undefined;
    });
  }
  return kept.lots;
}

async function readFlagged(clock: CoverClock): Promise<LotFigure[]> {
  return (await readLotFigures(clock)).filter(({ comparison }) => isFlagged(comparison));
}
