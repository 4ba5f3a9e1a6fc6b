import { transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { asShown } from '@/lib/jobs/facts';
import { readJob, readStage } from '@/lib/jobs/records';
import { writeEvent } from '@/lib/jobs/write-event';
import { lockJob } from '@/lib/jobs/write-lock';
import { Refusal } from '@/lib/outcome';
import { maySayIfNeeded, NEEDED_REASONS, NEEDED_STAGES } from './rules/part-not-needed';
import { partsToComeOf } from './stored-parts-to-come';

/**
 * Says of a part that a job is counted on to take that it does not need it, or does after all. One that is not needed is not waited
 * for, takes no turn before other jobs, and is not ordered for. Nobody is written to.
 */
export async function sayIfNeeded(o: OnJob & { partId: string; isNeeded: boolean }): Promise<void> {
  const { jobId, partId, isNeeded, now } = o;
  await transaction(async (tx) => {
    await lockJob(tx, jobId);
    const job = asShown(await readJob({ id: jobId }, tx), o.version);
    const part = partsToComeOf(job).find((each) => each.partId === partId) ?? null;
    const answer = maySayIfNeeded({ stage: readStage(job.stage), part, isNeeded });
    if (!part || !answer.allowed)
      throw new Refusal('conflict', NEEDED_REASONS[answer.allowed ? 'not-to-come' : answer.reason]);
    if (isNeeded) await tx.partNotNeeded.delete({ where: { jobId_partId: { jobId, partId } } });
    else await tx.partNotNeeded.create({ data: { jobId, partId, at: now, userId: o.actor.id } });
    await writeEvent(tx, {
      jobId,
      actor: o.actor,
      now,
      expected: { version: o.version, stages: NEEDED_STAGES },
      event: {
        kind: isNeeded ? 'part-needed' : 'part-not-needed',
        data: { partId, part: part.name },
      },
    });
  });
}
