import { transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { WORK_STAGES } from '@/lib/jobs/rules/stage-sets';
import { writeEvent } from '@/lib/jobs/write-event';
import { writeWatchOfJob } from '@/lib/returns/write-watch';
import { writePartUse } from './write-part-use';

/** Takes parts of a lot for a job: stock falls, the job carries the lot, and its history says so. */
export async function usePartOnJob(o: OnJob & { lotId: string; quantity: number }): Promise<void> {
  await transaction(async (tx) => {
    const taken = await writePartUse(tx, { ...o, userId: o.actor.id });
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      // The version keeps a second press from taking the part twice.
      expected: { version: o.version, stages: WORK_STAGES },
      event: {
        kind: 'part-used',
        data: { partUseId: taken.partUseId, part: taken.part, lot: taken.lot, quantity: taken.quantity },
      },
    });
    await writeWatchOfJob(tx, o.jobId);
  });
}
