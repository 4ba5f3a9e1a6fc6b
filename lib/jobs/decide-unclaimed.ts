import { compareDays, type Day, dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { writeWatch } from '@/lib/returns/write-watch';
import { closeClaim } from '@/lib/warranty/write-closed-claim';
import { readWorkshop } from '@/lib/workshop/records';
import type { OnJob } from './actor';
import { requireMove } from './facts';
import { readJob, readStage } from './records';
import { moveOf } from './rules/stages';
import { type Decision, decisionWords, mayDecide } from './rules/unclaimed';
import { noticeMail, stepOfUnit } from './rules/unclaimed-unit';
import { UNCLAIMED_FACTS } from './stored-unclaimed';
import { writeEvent } from './write-event';

/**
 * Keeps what the owner decided about a unit that nobody claimed, after the last notice was not answered, and tells the
 * customer. Kept longer, it stays where it is; sent back unpaid, it is ready again; otherwise the job is closed.
 */
export async function decideUnclaimed(
  o: OnJob & {
    decision: Decision;
    note: string;
    /** last day for which it is kept; only where it is kept longer */
    until: Day | null;
    /** the last notice did not reach the customer, and the owner says that they were told some other way */
    isToldOtherwise?: boolean;
  },
): Promise<void> {
  await transaction(async (tx) => {
    const job = await readJob({ id: o.jobId }, tx);
    const facts = await tx.job.findUnique({ where: { id: o.jobId }, select: UNCLAIMED_FACTS });
    if (!job || !facts) throw new Refusal('not-found', 'There is no such job.');
    if (job.version !== o.version) {
      throw new Refusal('conflict', 'This job changed while you had it open. Nothing was decided.');
    }
    const workshop = await readWorkshop(tx);
    const today = dayInZone(o.now, workshop.timeZone);
    if (o.actor.kind !== 'owner') throw new Refusal('not-allowed', 'This is for the owner to decide.');
    if (job.stage !== 'unclaimed') throw new Refusal('conflict', 'This unit does not stand as unclaimed.');
    if (stepOfUnit(facts, workshop, today).step !== 'decide') {
      throw new Refusal('invalid', 'The notices have not all been sent, or the last one still runs.');
    }
    const { isToldOtherwise = false } = o;
    if (!mayDecide(o.decision, { isReached: noticeMail(facts) === 'reached', isToldOtherwise })) {
      throw new Refusal(
        'invalid',
        'The last notice did not reach the customer. Send it again, or tell them some other way and tick that you did',
        'isToldOtherwise',
      );
    }
    const isKept = o.decision === 'keep-longer';
    if (isKept && (o.until === null || compareDays(o.until, today) <= 0)) {
      throw new Refusal('invalid', 'Choose a day after today until which it is kept', 'until');
    }
    const until = isKept ? o.until : null;
    const move = isKept ? null : o.decision === 'send-back-unpaid' ? 'take-up-again' : 'settle-unclaimed';
    if (move) requireMove(job, move, o.actor, { today, locale: workshop.locale });
    const to = move && moveOf(move).to;
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: ['unclaimed'] },
      ...(to && { from: readStage(job.stage), to }),
      ...(to === 'closed' && { set: { closedAt: o.now } }),
      event: { kind: 'unclaimed-decided', data: { decision: o.decision, note: o.note, until } },
    });
    if (to === 'closed' && job.claim) {
      await closeClaim(tx, job, { postage: 0, now: o.now });
      await writeWatch(tx, [job.claim.certificateNumber]);
    }
    if (to === 'ready') await tx.unclaimedNotice.deleteMany({ where: { jobId: job.id } });
    const isOwed = balanceOf(job).owed > 0;
    await queueMail(tx, {
      template: 'unclaimed-decided',
      data: { told: decisionWords(o.decision, { isOwed }).told, note: o.note, ...(until && { until }) },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
  });
}
