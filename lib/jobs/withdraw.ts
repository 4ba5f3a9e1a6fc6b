import { writeBesides } from '@/lib/bench/write-besides';
import { type Day, dayInZone } from '@/lib/calendar/day';
import { formatDay, formatInstant } from '@/lib/calendar/format';
import { type Tx, transaction } from '@/lib/db/transaction';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { moneyFactsSince } from '@/lib/invoices/stored-replaced';
import { creditStanding } from '@/lib/invoices/write-credit';
import { issueForJob } from '@/lib/invoices/write-invoice-of-job';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { owedIfWithdrawn, type WorkUntil, withdrawalLinesOf } from '@/lib/quotes/stored-withdrawal';
import { writeOwed } from '@/lib/quotes/write-owed';
import { readWorkshop } from '@/lib/workshop/records';
import { type AnsweredBy, answerer, requireTold } from './actor';
import { factsOf, requireMove } from './facts';
import { type JobRecord, readJob, readStage } from './records';
import { isUnruled, REASON_SENTENCES } from './rules/guards';
import { moveOf } from './rules/stages';
import { type BY_TELLING, heardOn, toldText } from './rules/told';
import { writeEvent } from './write-event';
import { lockJob } from './write-lock';
import { settleTold } from './write-settled';

/**
 * The customer withdraws from the contract within the period (Directive 2011/83/EU Art. 9, 11a). Before the unit is here
 * that cancels the booking; after it the unit comes back unrepaired. The agreed price becomes what is owed for the work
 * done, which is nothing unless the customer had asked for the start, and the receipt goes out by mail with day and time.
 *
 * The declaration counts whatever else was written on the job meanwhile (Art. 11). Only where work was recorded, so that
 * more is owed than the page said (`shownOwed`, with tax, minor units), nothing happens and the customer sees the new amount.
 * Withdrawing twice is not an error, since a tap on a weak signal is often sent again.
 *
 * One that was told to staff, or came in a letter, is as good as one on the page (Art. 11(1)(b)). It is in time by the day it was
 * said or posted (Art. 11(2)), and work after the workshop heard of it is not owed (Art. 14(3)).
 */
export async function withdraw(
  o: { jobId: string; shownOwed: number; now: Date } & AnsweredBy,
): Promise<void> {
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const job = await readJob({ id: o.jobId }, tx);
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    if (job.withdrawnAt) return;
    const workshop = await readWorkshop(tx);
    const { locale, timeZone } = workshop;
    const today = dayInZone(o.now, timeZone);
    const { actor, by, told } = answerer(o);
    const since = dayInZone(job.termsAcceptedAt ?? job.bookedAt, timeZone);
    requireTold(o, { version: job.version, since, today, locale });
    const on = { today: told?.on ?? today, locale };
    const isHere = job.stage !== 'booked';
    if (!factsOf(job, on.today).mayWithdraw) {
      throw new Refusal('conflict', REASON_SENTENCES['may-withdraw']);
    }
    requireMove(job, isHere ? 'withdraw' : 'cancel', actor, on);
    const heard = told ? heardOn(told) : null;
    const until = heard && { day: heard, timeZone };
    if (owedIfWithdrawn(job, until) > o.shownOwed) {
      throw new Refusal(
        'conflict',
        told
          ? 'More would be owed now than the page said, so nothing was written down yet.'
          : 'More would be owed now than the page said, so you have not withdrawn yet.',
      );
    }
    const agreedText = told
      ? toldText(told, 'withdrawn from the contract.', locale)
      : 'Withdrawn from the contract.';
    const owed = await agreeOnOwed(tx, { job, until, agreedText, by, today, now: o.now });
    await writeBesides(tx, { jobId: job.id, actor, now: o.now });
    const move = moveOf(isHere ? 'withdraw' : 'cancel');
    await writeEvent(tx, {
      jobId: job.id,
      actor,
      now: o.now,
      expected: { stages: move.from },
      set: { withdrawnAt: o.now },
      from: readStage(job.stage),
      to: move.to,
      event: { kind: 'withdrawn', data: { owed, ...(told && { told }) } },
    });
    if (!isHere)
      await creditStanding(tx, {
        jobId: job.id,
        reason: 'The customer withdrew from the contract',
        actor,
        now: o.now,
      });
    // An invoice that was issued ahead is credited, and replaced by one over what is owed.
    if (job.invoices.length > 0) await issueForJob(tx, { jobId: job.id, actor, now: o.now });
    const { replaced } = await moneyFactsSince(tx, job);
    await settleTold(tx, o);
    await queueMail(tx, {
      template: 'withdrawal-recorded',
      data: {
        at: heard ? formatDay(heard, locale, 'weekday') : formatInstant(o.now, { locale, zone: timeZone }),
        owed,
        refund: Math.max(0, balanceOf(job).paid - owed),
        isHere,
        ...(isUnruled(factsOf(job)) && { isAnswerDue: true }),
        ...(replaced && { replaced }),
        ...(told && { told }),
      },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
  });
}

type Withdrawn = {
  job: JobRecord;
  until: WorkUntil | null;
  agreedText: string;
  by: 'customer' | typeof BY_TELLING;
  today: Day;
  now: Date;
};

/** Puts what is owed in the place of the agreed price and of any that waits for an answer. */
async function agreeOnOwed(tx: Tx, o: Withdrawn): Promise<number> {
  const [quote] = o.job.quotes;
  if (!quote) throw new Error('a job without a quote');
  const lines = withdrawalLinesOf(o.job, o.until);
  return writeOwed(tx, { ...o, quote, lines, reason: 'The customer withdrew from the contract' });
}
