import { dayFromDate } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { requireMove } from '@/lib/jobs/facts';
import { type JobRecord, readJob, readStage } from '@/lib/jobs/records';
import { moveOf } from '@/lib/jobs/rules/stages';
import { writeEvent } from '@/lib/jobs/write-event';
import { lockJob } from '@/lib/jobs/write-lock';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { writePromiseMove } from '@/lib/promise/write-move';
import type { DuePrice, LapseCall } from './due-price';
import { costOfNoFacts, readCostOfNo } from './stored-after-no';
import { priceFacts } from './stored-offer-words';

const CLOCK: Actor = { kind: 'clock' };

/**
 * Ends a changed price of a job. One that the customer was asked for leads the job back to assessing, so that staff write
 * another; one that was written and never sent just no longer counts, and nobody is told.
 *
 * The job's row is locked first, as an answer does: whichever comes second finds the price answered or lapsed.
 */
export async function lapseOffer(tx: Tx, price: DuePrice, jobId: string, call: LapseCall): Promise<void> {
  const job = await lockedJob(tx, jobId);
  const { count } = await tx.quoteRevision.updateMany({
    where: { id: price.id, state: 'sent' },
    data: { state: 'lapsed' },
  });
  if (count === 0) throw new Refusal('conflict', 'This price was answered or replaced already.');
  const event = { kind: 'offer-lapsed', data: { revision: price.revision } } as const;
  const by = { jobId, actor: CLOCK, now: call.now };
  if (job.stage !== 'awaiting-approval') {
    await writeEvent(tx, { ...by, event });
    return;
  }
  requireMove(job, 'lapse', CLOCK);
  const move = moveOf('lapse');
  await writeEvent(tx, {
    ...by,
    expected: { version: job.version, stages: move.from },
    from: readStage(job.stage),
    to: move.to,
    event,
  });
  await writePromiseMove(tx, { job, furtherDays: 0, workshop: call.workshop, actor: CLOCK, now: call.now });
  await queueMail(tx, {
    template: 'offer-lapsed',
    data: {
      revision: price.revision,
      gross: price.grossMinor,
      validUntil: dayFromDate(price.validUntil),
      ...priceFacts(job),
    },
    to: job.customer.email,
    jobId,
    now: call.now,
  });
}

/** Reminds of a changed price that waits for its answer; one that was not sent yet is left alone. */
export async function remindOfOffer(tx: Tx, price: DuePrice, jobId: string, call: LapseCall): Promise<void> {
  const job = await lockedJob(tx, jobId);
  if (job.stage !== 'awaiting-approval') {
    throw new Refusal('conflict', 'The customer was not asked for this price.');
  }
  await queueMail(tx, {
    template: 'offer-reminder',
    data: {
      revision: price.revision,
      gross: price.grossMinor,
      validUntil: dayFromDate(price.validUntil),
      ...costOfNoFacts(readCostOfNo(job, call.workshop)),
      ...priceFacts(job),
    },
    to: job.customer.email,
    jobId,
    now: call.now,
  });
}

async function lockedJob(tx: Tx, jobId: string): Promise<JobRecord> {
  await lockJob(tx, jobId);
  const job = await readJob({ id: jobId }, tx);
  if (!job) throw new Error('a price belongs to a job that is not there');
  return job;
}
