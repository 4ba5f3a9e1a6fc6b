import { compareDays, type Day, dayInZone } from '@/lib/calendar/day';
import { factsOf } from '@/lib/jobs/facts';
import type { JobRecord } from '@/lib/jobs/records';
import {
  type AgreedPrice,
  agreedBefore,
  agreedPrice,
  changesInstead,
  minutesAgreed,
  othersByName,
  repairChanges,
  repairsAgreed,
} from '@/lib/jobs/rules/agreed-work';
import { mayMove } from '@/lib/jobs/rules/guards';
import { agreedOf } from './rules/agreed';
import { type QuoteLine, revisionTotals } from './rules/lines';
import { withdrawalLines } from './rules/withdrawal';
import { workUnderRequest } from './rules/work-under-request';
import { readLine } from './stored-lines';

/** The last day whose work is owed, where the workshop is: the day it heard of the withdrawal. */
export type WorkUntil = { day: Day; timeZone: string };

/**
 * What a job's customer would owe who withdraws now, or of whose withdrawal the workshop
 * heard on an earlier day (`until`), line by line with tax. Every booking under the right to withdraw was
 * informed of it before and by mail, so that only the request to start and the work done decide.
 */
export function withdrawalLinesOf(job: JobRecord, until: WorkUntil | null = null): QuoteLine[] {
  const agreed = agreedOf(job);
  if (!agreed) throw new Error('a job without an agreed price');
  const lines = agreed.lines.map(readLine);
  const price = agreedPrice({ agreedAt: agreed.decidedAt, lines, under: job.repair });
  const counts = ({ at }: { at: Date }) =>
    until === null || compareDays(dayInZone(at, until.timeZone), until.day) <= 0;
  const { minutes, isInspected } = workUnderRequest({
    events: job.events.filter(counts),
    findings: job.findings.filter(counts),
    work: job.work.filter(counts),
    requestedAt: job.startRequestedAt,
    agreed: lines,
  });
  return withdrawalLines(lines, {
    isGross: agreed.isGross,
    isInspected,
    minutesDone: minutes,
    minutesPlanned: minutesInPrice(job, price),
    hasStartRequest: job.startRequestedAt !== null,
    isInformed: job.withdrawUntil !== null,
  });
}

/**
 * Bench minutes planned for all that the agreed price names. What the unit is proved on says nothing of it: the bench adds sheets
 * that nobody pays for, and leaves out what the customer pays for until another price is agreed.
 */
function minutesInPrice(job: JobRecord, price: AgreedPrice): number {
  const changes = repairChanges(job.events);
  const own = minutesAgreed(changesInstead(changes, price), job.repair.minutes);
  const { repairs } = job.model;
  const named = repairsAgreed(repairs, { changes, price, underId: job.repair.id });
  // A job that was put under a repair of another model has those of the model before among its sheets and in its history alone. One that
  // it was never under counts no more once its sheet is left out, unless this model has one of its name.
  const sheets = job.besides
    .filter(({ isByPrice, sheet }) => isByPrice && !repairs.some(({ id }) => id === sheet.repairId))
    .map(({ sheet }) => sheet.repair);
  const elsewhere = othersByName(
    [job.repair, ...named],
    [...sheets, ...agreedBefore(repairs, { changes, price })],
  );
  return [...named, ...elsewhere].reduce((sum, { minutes }) => sum + minutes, own);
}

/** The same in one amount, with tax, minor units. */
export function owedIfWithdrawn(job: JobRecord, until: WorkUntil | null = null): number {
  return revisionTotals(withdrawalLinesOf(job, until), true).gross;
}

/** The same where the customer could withdraw today; null where there is no such right, or not any more. */
export function openWithdrawal(job: JobRecord, today: Day): number | null {
  return mayMove('withdraw', factsOf(job, today), 'customer').allowed ? owedIfWithdrawn(job) : null;
}
