import type { JobRecord } from '@/lib/jobs/records';
import { minutesAgreed, repairChanges } from '@/lib/jobs/rules/under-repair';
import { agreedOf } from './rules/agreed';
import { type QuoteLine, revisionTotals } from './rules/lines';
import { withdrawalLines } from './rules/withdrawal';
import { workUnderRequest } from './rules/work-under-request';
import { readLine } from './stored-lines';

/**
 * What a job's customer would owe who withdraws now, line by line with tax. Every booking under the right to withdraw was
 * informed of it before and by mail, so that only the request to start and the work done decide.
 */
export function withdrawalLinesOf(job: JobRecord): QuoteLine[] {
  const agreed = agreedOf(job);
  if (!agreed) throw new Error('a job without an agreed price');
  const lines = agreed.lines.map(readLine);
  const { minutes, isInspected } = workUnderRequest({
    ...job,
    requestedAt: job.startRequestedAt,
    agreed: lines,
  });
  return withdrawalLines(lines, {
    isGross: agreed.isGross,
    isInspected,
    minutesDone: minutes,
    minutesPlanned: minutesAgreed(repairChanges(job.events), {
      agreedAt: agreed.decidedAt,
      minutes: job.repair.minutes,
    }),
    hasStartRequest: job.startRequestedAt !== null,
    isInformed: job.withdrawUntil !== null,
  });
}

/** The same in one amount, with tax, minor units. */
export function owedIfWithdrawn(job: JobRecord): number {
  return revisionTotals(withdrawalLinesOf(job), true).gross;
}
