import { dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { type Tx, transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { asShown, factsOf, requireMove } from '@/lib/jobs/facts';
import { type JobRecord, readJob, readStage } from '@/lib/jobs/records';
import { mayMove } from '@/lib/jobs/rules/guards';
import { isCollected } from '@/lib/jobs/rules/handover';
import { moveOf } from '@/lib/jobs/rules/stages';
import { type GoneFacts, mayUndoDispatch, UNDO_REASONS } from '@/lib/jobs/rules/undone';
import { writeEvent } from '@/lib/jobs/write-event';
import { lockJob } from '@/lib/jobs/write-lock';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { writeClaimOfUndone } from './write-claim-of-undone';

/**
 * Takes back that a unit left: it was recorded by mistake, and lies here. It is ready to go as before, and its customer, who was
 * told otherwise, is told. What was issued stands, and the days until it really leaves are given back then (plan-again.ts); a claim that
 * got nothing issued is open to its customer again.
 */
export async function undoDispatch(o: OnJob & { reason: string }): Promise<void> {
  const { from, to } = moveOf('undo-dispatch');
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const job = asShown(await readJob({ id: o.jobId }, tx), o.version);
    requireMove(job, 'undo-dispatch', o.actor);
    const { timeZone } = await readWorkshop(tx);
    const answer = mayUndoDispatch(await goneFacts(job, { now: o.now, timeZone }, tx));
    if (!answer.allowed) throw new Refusal('conflict', UNDO_REASONS[answer.reason]);
    const wasCollected = isCollected(job.events);
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: from },
      set: { sentBackAt: null, closedAt: null, soughtSince: null, carrier: '', carrierReference: '' },
      from: readStage(job.stage),
      to,
      event: {
        kind: 'dispatch-undone',
        data: { carrier: job.carrier, reference: job.carrierReference, reason: o.reason },
      },
    });
    await writeClaimOfUndone(tx, job);
    await queueMail(tx, {
      template: 'dispatch-undone',
      data: {
        reason: o.reason,
        ...(wasCollected && { wasCollected }),
        ...(job.certificates.length > 0 && { hasCertificate: true }),
        ...((await isOpenToContest(tx, job.id)) && { mayContest: true }),
      },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
  });
}

/** Whether the customer may contest the ruling again, as the job stands inside the transaction. */
async function isOpenToContest(tx: Tx, jobId: string): Promise<boolean> {
  const job = await readJob({ id: jobId }, tx);
  return job !== null && mayMove('contest', factsOf(job), 'customer').allowed;
}

/** What decides whether it can be taken back that a job's unit left. */
export async function goneFacts(
  job: JobRecord,
  o: { now: Date; timeZone: string },
  client: Tx = db,
): Promise<GoneFacts> {
  const { sentBackAt, certificates, claim } = job;
  const number = certificates.at(-1)?.number ?? claim?.certificateNumber;
  const since =
    sentBackAt === null || number === undefined
      ? 0
      : await client.claim.count({
          where: { certificateNumber: number, openedAt: { gte: sentBackAt }, jobId: { not: job.id } },
        });
  return {
    sentBackOn: sentBackAt && dayInZone(sentBackAt, o.timeZone),
    today: dayInZone(o.now, o.timeZone),
    isClaimedSince: since > 0,
    isErased: job.customer.erasedAt !== null,
  };
}
