import { dayInZone } from '@/lib/calendar/day';
import { formatInstant } from '@/lib/calendar/format';
import { type Tx, transaction } from '@/lib/db/transaction';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { moneyFactsSince } from '@/lib/invoices/stored-replaced';
import { creditStanding } from '@/lib/invoices/write-credit';
import { issueForJob } from '@/lib/invoices/write-invoice-of-job';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { owedIfWithdrawn, withdrawalLinesOf } from '@/lib/quotes/stored-withdrawal';
import { writeOwed } from '@/lib/quotes/write-owed';
import { readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { factsOf, requireMove } from './facts';
import { type JobRecord, readJob, readStage } from './records';
import { isUnruled, REASON_SENTENCES } from './rules/guards';
import { moveOf } from './rules/stages';
import { writeEvent } from './write-event';
import { lockJob } from './write-lock';

const CUSTOMER = { kind: 'customer' } as const;

/**
 * The customer withdraws from the contract within the period (Directive 2011/83/EU Art. 9, 11a). Before the unit is here
 * that cancels the booking; after it the unit comes back unrepaired. The agreed price becomes what is owed for the work
 * done, which is nothing unless the customer had asked for the start, and the receipt goes out by mail with day and time.
 *
 * The declaration counts whatever else was written on the job meanwhile (Art. 11). Only where work was recorded, so that
 * more is owed than the page said (`shownOwed`, with tax, minor units), nothing happens and the customer sees the new amount.
 * Withdrawing twice is not an error, since a tap on a weak signal is often sent again.
 */
export async function withdraw(o: { jobId: string; shownOwed: number; now: Date }): Promise<void> {
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const job = await readJob({ id: o.jobId }, tx);
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    if (job.withdrawnAt) return;
    const workshop = await readWorkshop(tx);
    const on = { today: dayInZone(o.now, workshop.timeZone), locale: workshop.locale };
    const isHere = job.stage !== 'booked';
    if (!factsOf(job, on.today).mayWithdraw) {
      throw new Refusal('conflict', REASON_SENTENCES['may-withdraw']);
    }
    requireMove(job, isHere ? 'withdraw' : 'cancel', CUSTOMER, on);
    if (owedIfWithdrawn(job) > o.shownOwed) {
      throw new Refusal(
        'conflict',
        'More would be owed now than the page said, so you have not withdrawn yet.',
      );
    }
    const owed = await agreeOnOwed(tx, job, workshop, o.now);
    const move = moveOf(isHere ? 'withdraw' : 'cancel');
    await writeEvent(tx, {
      jobId: job.id,
      actor: CUSTOMER,
      now: o.now,
      expected: { stages: move.from },
      set: { withdrawnAt: o.now },
      from: readStage(job.stage),
      to: move.to,
      event: { kind: 'withdrawn', data: { owed } },
    });
    if (!isHere)
      await creditStanding(tx, {
        jobId: job.id,
        reason: 'The customer withdrew from the contract',
        actor: CUSTOMER,
        now: o.now,
      });
    // An invoice that was issued ahead is credited, and replaced by one over what is owed.
    if (job.invoices.length > 0) await issueForJob(tx, { jobId: job.id, actor: CUSTOMER, now: o.now });
    const { replaced } = await moneyFactsSince(tx, job);
    await queueMail(tx, {
      template: 'withdrawal-recorded',
      data: {
        at: formatInstant(o.now, { locale: workshop.locale, zone: workshop.timeZone }),
        owed,
        refund: Math.max(0, balanceOf(job).paid - owed),
        isHere,
        ...(isUnruled(factsOf(job)) && { isAnswerDue: true }),
        ...(replaced && { replaced }),
      },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
  });
}

/** Puts what is owed in the place of the agreed price and of any that waits for an answer. */
async function agreeOnOwed(tx: Tx, job: JobRecord, workshop: WorkshopCard, now: Date): Promise<number> {
  const [quote] = job.quotes;
  if (!quote) throw new Error('a job without a quote');
  return writeOwed(tx, {
    quote,
    lines: withdrawalLinesOf(job),
    reason: 'The customer withdrew from the contract',
    agreedText: 'Withdrawn from the contract.',
    by: CUSTOMER.kind,
    today: dayInZone(now, workshop.timeZone),
    now,
  });
}
