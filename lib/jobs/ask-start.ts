import { dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { factsOf } from './facts';
import { readJob } from './records';
import { writeEvent } from './write-event';

/**
 * Records that the customer wants work to start before the right to withdraw ends, knowing what that means. Asked twice it
 * is asked once. The promise stays as it was given: it may be kept early.
 */
export async function askStart(o: { jobId: string; version: number; now: Date }): Promise<void> {
  await transaction(async (tx) => {
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
      expected: { version: o.version },
      set: { startRequestedAt: o.now },
      event: { kind: 'start-requested', data: {} },
    });
  });
}
