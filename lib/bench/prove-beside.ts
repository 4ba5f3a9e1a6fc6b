import { transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { factsOf } from '@/lib/jobs/facts';
import { readJob } from '@/lib/jobs/records';
import { BESIDE_REASONS, mayProveBeside, UNDER_REPAIR_STAGES } from '@/lib/jobs/rules/under-repair';
import { Refusal } from '@/lib/outcome';
import { newestSheetOf } from './sheet-records';
import { addBeside } from './write-besides';

/**
 * Has a unit pass the check sheet of another repair of its model as well, for one that is done beside the repair its job is under. No
 * price changes by it and nobody is written to: what the customer is to pay for needs their yes.
 */
export async function proveBeside(o: OnJob & { repairId: string }): Promise<void> {
  await transaction(async (tx) => {
    const job = await readJob({ id: o.jobId }, tx);
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    const answer = mayProveBeside(factsOf(job));
    if (!answer.allowed) throw new Refusal('conflict', BESIDE_REASONS[answer.reason]);
    const repair = await tx.repair.findFirst({
      where: { id: o.repairId, modelId: job.model.id },
      select: { id: true, name: true },
    });
    if (!repair) throw new Refusal('invalid', 'Choose a repair of this unit', 'beside');
    const there = [job.sheet, ...job.besides.map(({ sheet }) => sheet)];
    if (there.some(({ repairId }) => repairId === repair.id))
      throw new Refusal('conflict', `“${repair.name}” is proved on this job already.`, 'beside');
    const sheet = await newestSheetOf(repair.id, tx);
    if (!sheet)
      throw new Refusal('invalid', 'This repair has no check sheet yet, so it cannot be proved', 'beside');
    await addBeside(tx, {
      jobId: job.id,
      sheet,
      repair: repair.name,
      isByPrice: false,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: UNDER_REPAIR_STAGES },
    });
  });
}
