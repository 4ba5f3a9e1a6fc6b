import { factsOf } from '@/lib/jobs/facts';
import type { JobRecord } from '@/lib/jobs/records';
import { isSomethingCovered } from '@/lib/jobs/rules/guards';
import type { WorkshopCard } from '@/lib/workshop/records';
import { type CostOfNo, feesAfterNo, linesAfterNo } from './rules/after-no';
import { agreedOf } from './rules/agreed';
import type { QuoteLine } from './rules/lines';
import { readLine } from './stored-lines';

/**
 * The lines that a job's agreed price becomes when its changed price is declined; a claim's unit goes back free, and so does
 * one that cannot be repaired.
 */
export function readLinesAfterNo(
  job: JobRecord,
  workshop: WorkshopCard,
  { isReturnFree = false }: { isReturnFree?: boolean } = {},
): QuoteLine[] {
  const agreed = agreedOf(job);
  if (!agreed) throw new Error('a job without an agreed price');
  return linesAfterNo({
    agreed: agreed.lines.map(readLine),
    isGross: agreed.isGross,
    // Part of the terms: who has not agreed to them yet does not owe it, and who has owes no more than it was then.
    returnFee: isReturnFree ? 0 : Math.min(job.returnFeeMinor ?? 0, workshop.returnFeeMinor),
  });
}

/** What a no to a changed price of this job costs, fee by fee. */
export function readCostOfNo(job: JobRecord, workshop: WorkshopCard): CostOfNo {
  return isSomethingCovered(factsOf(job)) ? null : feesAfterNo(readLinesAfterNo(job, workshop));
}

/** The same as facts of a mail. */
export function costOfNoFacts(cost: CostOfNo): { returnFee: number | null; inspectionFee?: number } {
  if (cost === null) return { returnFee: null };
  const { returnFee, inspectionFee } = cost;
  return inspectionFee > 0 ? { returnFee, inspectionFee } : { returnFee };
}
