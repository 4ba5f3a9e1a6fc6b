import { writeNeededAnew } from '@/lib/bench/write-needed-anew';
import { type Day, dayInZone } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { factsOf } from '@/lib/jobs/facts';
import { writeEvent } from '@/lib/jobs/write-event';
import { writeUnderRepair } from '@/lib/jobs/write-under-repair';
import { writeContract, type Yes } from './write-contract';

/** Whether a price is for another repair than its job is under, so that a yes puts the job under that. */
export function isForOther(job: Yes['job'], { repairId }: Pick<Yes['offer'], 'repairId'>): boolean {
  return repairId !== null && repairId !== job.repair.id;
}

/**
 * What a yes to a price brings beside the price: the repair that the job is put under, the parts it needs again, the contract where it makes one, and the
 * customer's wish for an early start. Gives the last day that work waits for, null where it may go on at once, and the working days until then by which a
 * contract made now moves the promise.
 */
export async function writeYes(tx: Tx, o: Yes): Promise<{ startAfter: Day | null; waits: number }> {
  const today = dayInZone(o.now, o.workshop.timeZone);
  const facts = factsOf(o.job, today);
  // What is proved, certified and counted is the repair that was agreed to.
  const { repairId } = o.offer;
  const under =
    repairId !== null && isForOther(o.job, o.offer) ? await writeUnderRepair(tx, { ...o, repairId }) : o.job;
  await writeNeededAnew(tx, o);
  if (!facts.isContractMade) return writeContract(tx, { ...o, job: { ...o.job, ...under } });
  if (o.isStartAsked && o.job.withdrawUntil && !o.job.startRequestedAt) {
    await writeEvent(tx, {
      jobId: o.job.id,
      actor: o.actor,
      now: o.now,
      set: { startRequestedAt: o.now },
      event: { kind: 'start-requested', data: {} },
    });
    return { startAfter: null, waits: 0 };
  }
  return { startAfter: facts.isStartAllowed ? null : facts.withdrawUntil, waits: 0 };
}
