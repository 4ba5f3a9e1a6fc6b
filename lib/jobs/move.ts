import { addDays, dayInZone } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { transaction } from '@/lib/db/transaction';
import type { MailContent, MailRequest } from '@/lib/mail/messages';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import type { Actor } from './actor';
import { factsOf, requireMove } from './facts';
import { type JobRecord, readJob, readStage } from './records';
import { answerMove } from './rules/guards';
import { type MoveKey, moveOf, type StageMail } from './rules/stages';
import { writeEvent } from './write-event';

/** Moves with facts of their own have their own use case; these need nothing but the table. */
export const PLAIN_MOVES = [
  'cancel',
  'assess',
  'ask-approval',
  'take-back-price',
  'start-bench',
  'wait-for-parts',
  'parts-in',
  'prove',
  'fail-check',
  'pass-checks',
  'return-unrepaired',
  'pack-unrepaired',
  'close',
  'set-aside',
  'take-up-again',
] as const satisfies readonly MoveKey[];
export type PlainMove = (typeof PLAIN_MOVES)[number];

export function isPlainMove(text: string): text is PlainMove {
  return (PLAIN_MOVES as readonly string[]).includes(text);
}

/** Days a customer has to answer the first notice about a unit left with us. */
const NOTICE_DAYS = 30;

/**
 * Takes one move of the table. Every need is checked on records read inside the transaction; the write names the
 * version the person saw, so that of two who press at once the second gets a conflict.
 */
export async function moveJob(o: {
  jobId: string;
  version: number;
  move: PlainMove;
  note: string;
  actor: Actor;
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    const job = await readJob({ id: o.jobId }, tx);
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    if (job.version !== o.version) {
      throw new Refusal('conflict', 'This job changed while you had it open. Nothing was moved.');
    }
    requireMove(job, o.move, o.actor);
    const move = moveOf(o.move);
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: move.from },
      set: {
        ...(move.to === 'ready' && move.from.every((stage) => stage !== 'unclaimed')
          ? { readyAt: o.now }
          : {}),
        ...(move.to === 'closed' ? { closedAt: o.now } : {}),
      },
      from: readStage(job.stage),
      to: move.to,
      event: { kind: 'moved', data: { move: o.move, note: o.note } },
    });
    if (o.move === 'take-back-price') await takeBackOffers(tx, job.id);
    if (move.to === 'cancelled') await closeCancelledClaim(tx, job.id, o.now);
    if (move.mail) await queueStageMail(tx, job, move.mail, o);
  });
}

/** What a no to a changed price costs; null where it sends nothing back, because part of the claim is covered. */
function feeAfterNo(job: JobRecord, returnFee: number): number | null {
  if (answerMove('declined', factsOf(job)) === 'decline-the-rest') return null;
  return job.kind === 'claim' ? 0 : returnFee;
}

/** A price that was taken back cannot be agreed to any more, however late the answer comes. */
async function takeBackOffers(tx: Tx, jobId: string): Promise<void> {
  await tx.quoteRevision.updateMany({
    where: { quote: { jobId }, state: 'sent' },
    data: { state: 'replaced' },
  });
}

/** A claim whose unit is not sent in after all is over; it must not keep the next one from being opened. */
async function closeCancelledClaim(tx: Tx, jobId: string, now: Date): Promise<void> {
  await tx.claim.updateMany({
    where: { jobId, state: { not: 'closed' } },
    data: { state: 'closed', closedAt: now },
  });
}

async function queueStageMail(
  tx: Tx,
  job: JobRecord,
  mail: StageMail,
  o: { note: string; now: Date },
): Promise<void> {
  const content = await stageMail(tx, job, mail, o);
  const request: MailRequest = { ...content, to: job.customer.email, jobId: job.id, now: o.now };
  await queueMail(tx, request);
}

async function stageMail(
  tx: Tx,
  job: JobRecord,
  mail: StageMail,
  o: { note: string; now: Date },
): Promise<MailContent> {
  const workshop = await readWorkshop(tx);
  const revisions = job.quotes[0]?.revisions ?? [];
  switch (mail) {
    case 'job-cancelled':
      return { template: mail, data: { reason: o.note } };
    case 'unit-ready':
      return { template: mail, data: { balance: Math.max(0, factsOf(job).owed) } };
    case 'approval-asked': {
      const offer = revisions.find((revision) => revision.state === 'sent');
      const agreed = revisions.find((revision) => revision.state === 'accepted');
      if (!offer) throw new Error('a changed price was asked for without an offer');
      return {
        template: mail,
        data: {
          revision: offer.revision,
          reason: offer.reason,
          previousGross: agreed?.grossMinor ?? 0,
          gross: offer.grossMinor,
          returnFee: feeAfterNo(job, workshop.returnFeeMinor),
          validUntil: dayInZone(offer.validUntil, 'UTC'),
        },
      };
    }
    case 'unclaimed-notice':
      return {
        template: mail,
        data: { notice: 1, lastDay: addDays(dayInZone(o.now, workshop.timeZone), NOTICE_DAYS) },
      };
    default:
      throw new Error(`the move's mail ${mail} is written by its own use case`);
  }
}
