import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from './actor';
import { WORK_STAGES } from './rules/stage-sets';
import { writeEvent } from './write-event';
import { idOfSent, writeOnce } from './write-once';

/** Adds work done at the bench, with the minutes it took. */
export async function recordWork(
  o: ByStaff & { jobId: string; text: string; minutes: number; formKey?: string | undefined },
): Promise<void> {
  await writeOnce('work_entry_pkey', () =>
    transaction(async (tx) => {
      const work = await tx.workEntry.create({
        data: {
          ...idOfSent(o.formKey, [o.jobId, o.text, o.minutes]),
          jobId: o.jobId,
          text: o.text,
          minutes: o.minutes,
          at: o.now,
          userId: o.actor.id,
        },
        select: { id: true },
      });
      await writeEvent(tx, {
        jobId: o.jobId,
        actor: o.actor,
        now: o.now,
        expected: { stages: WORK_STAGES },
        event: { kind: 'work-recorded', data: { workId: work.id, minutes: o.minutes } },
      });
    }),
  );
}
