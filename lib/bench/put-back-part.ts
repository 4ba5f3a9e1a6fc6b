import { transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { isRepaired } from '@/lib/jobs/rules/repaired';
import { writeEvent } from '@/lib/jobs/write-event';
import { Refusal } from '@/lib/outcome';
import { writeWatchOfJob } from '@/lib/returns/write-watch';
import { putBackStages } from './rules/put-back';

/**
 * Puts a part that a job took back into its lot, all pieces of that taking: stock rises, the job no longer carries the lot, and
 * its history says so. The row goes, so that no certificate, letter about the lot, cost or order counts it.
 *
 * Two people may press at once: the one whose delete finds no row, or who saw an older version, is told and puts nothing back.
 */
export async function putBackPart(o: OnJob & { partUseId: string }): Promise<void> {
  await transaction(async (tx) => {
    const where = { id: o.partUseId, jobId: o.jobId };
    const use = await tx.partUse.findFirst({
      where,
      select: {
        lotId: true,
        quantity: true,
        lot: { select: { code: true, part: { select: { name: true } } } },
        job: {
          select: { events: { orderBy: { version: 'asc' }, select: { fromStage: true, toStage: true } } },
        },
      },
    });
    if (!use || (await tx.partUse.deleteMany({ where })).count === 0) {
      throw new Refusal('conflict', 'This part was put back already.');
    }
    const { lotId, lot, quantity, job } = use;
    await tx.lot.update({
      where: { id: lotId },
      data: { inStock: { increment: quantity } },
      select: { id: true },
    });
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: putBackStages(isRepaired(job.events)) },
      event: {
        kind: 'part-put-back',
        data: { partUseId: o.partUseId, part: lot.part.name, lot: lot.code, quantity },
      },
    });
    await writeWatchOfJob(tx, o.jobId);
  });
}
