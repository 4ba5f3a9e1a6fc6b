import { transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { factsOf } from '@/lib/jobs/facts';
import { readJob } from '@/lib/jobs/records';
import { BESIDE_REASONS, mayProveBeside, UNDER_REPAIR_STAGES } from '@/lib/jobs/rules/under-repair';
import { Refusal } from '@/lib/outcome';
import { removeBeside } from './write-besides';

/**
 * Takes the check sheet of a repair that was not done after all away from what a unit passes. What was entered on it stays with the
 * job and counts no more. Pressed twice it changes nothing.
 */
export async function leaveBeside(o: OnJob & { besideId: string }): Promise<void> {
  await transaction(async (tx) => {
    const job = await readJob({ id: o.jobId }, tx);
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    const beside = job.besides.find(({ id }) => id === o.besideId);
    if (!beside) return;
    const answer = mayProveBeside(factsOf(job));
    if (!answer.allowed) throw new Refusal('conflict', BESIDE_REASONS[answer.reason]);
    await removeBeside(tx, {
      jobId: job.id,
      id: beside.id,
      repair: beside.sheet.repair.name,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: UNDER_REPAIR_STAGES },
    });
  });
}
