import { dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { factsOf } from './facts';
import { readJob } from './records';
import { writeEvent } from './write-event';
import { lockJob } from './write-lock';

/**
 * Records that the customer wants work to start before the right to withdraw ends, knowing what that means. Asked twice it
 * is asked once, and nothing else that was written on the job meanwhile stands against it. The promise stays as it was given: it may be kept early.
 */
export async function askStart(o: { jobId: string; now: Date }): Promise<void> {
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const job = await readJob({ id: o.jobId }, tx);
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    if (job.startRequestedAt) return;
    const { timeZone } = await readWorkshop(tx);
    if (!factsOf(job, dayInZone(o.now, timeZone)).mayWithdraw) {
      throw new Refusal('conflict', 'There is nothing left to ask for: the period to withdraw is over.');
    }
    await writeEvent(tx, {
      jobId: job.id,
      actor: { kind: 'customer' },
      now: o.now,
      set: { startRequestedAt: o.now },
      event: { kind: 'start-requested', data: {} },
    });
  });
}
