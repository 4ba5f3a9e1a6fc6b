import { writeBesides } from '@/lib/bench/write-besides';
import { dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { moneyFactsSince } from '@/lib/invoices/stored-replaced';
import { issueForJob } from '@/lib/invoices/write-invoice-of-job';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { feesAfterNo } from '@/lib/quotes/rules/after-no';
import { readLinesAfterNo } from '@/lib/quotes/stored-after-no';
import { openWithdrawal } from '@/lib/quotes/stored-withdrawal';
import { writeOwed } from '@/lib/quotes/write-owed';
import { readWorkshop } from '@/lib/workshop/records';
import type { OnJob } from './actor';
import { requireMove } from './facts';
import { readJob, readStage } from './records';
import { moveOf } from './rules/stages';
import { goesByWithdrawal, type Stop, WITHDRAWAL_INSTEAD } from './rules/stop';
import { writeEvent } from './write-event';
import { lockJob } from './write-lock';

/**
 * The workshop sends a unit back unrepaired without an answer from the customer's page: they asked for it some other way, or it
 * cannot be repaired. Whatever price stood or waited becomes what is owed, an invoice issued ahead is replaced, and the customer
 * is told why and what it costs.
 */
export async function stopRepair(
  o: OnJob & {
    why: Stop;
    /** in words for the customer */
    reason: string;
  },
): Promise<void> {
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const job = await readJob({ id: o.jobId }, tx);
    const [quote] = job?.quotes ?? [];
    if (!job || !quote) throw new Refusal('not-found', 'There is no such job.');
    if (job.version !== o.version) {
      throw new Refusal('conflict', 'This job changed while you had it open. Nothing was moved.');
    }
    const workshop = await readWorkshop(tx);
    const today = dayInZone(o.now, workshop.timeZone);
    requireMove(job, 'stop-repair', o.actor, { today, locale: workshop.locale });
    const lines = readLinesAfterNo(job, workshop, { isReturnFree: o.why === 'cannot-repair' });
    const { inspectionFee, returnFee } = feesAfterNo(lines);
    if (goesByWithdrawal(o.why, { fees: inspectionFee + returnFee, owed: openWithdrawal(job, today) })) {
      throw new Refusal('invalid', WITHDRAWAL_INSTEAD, 'why');
    }
    const owed = await writeOwed(tx, {
      quote,
      lines,
      reason:
        o.why === 'cannot-repair'
          ? 'Returned unrepaired: it cannot be repaired'
          : 'Returned unrepaired as the customer asked',
      agreedText: o.reason,
      by: o.actor.kind,
      today,
      now: o.now,
    });
    const move = moveOf('stop-repair');
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: move.from },
      from: readStage(job.stage),
      to: move.to,
      event: { kind: 'repair-stopped', data: { why: o.why, reason: o.reason, owed } },
    });
    await writeBesides(tx, o);
    if (job.invoices.length > 0) await issueForJob(tx, o);
    const { replaced } = await moneyFactsSince(tx, job);
    await queueMail(tx, {
      template: 'repair-stopped',
      data: {
        why: o.why,
        reason: o.reason,
        gross: owed,
        inspectionFee,
        refund: Math.max(0, balanceOf(job).paid - owed),
        ...(replaced && { replaced }),
      },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
  });
}
