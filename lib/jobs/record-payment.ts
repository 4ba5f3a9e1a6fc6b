import { compareDays, type Day, dayInZone, dayToDate } from '@/lib/calendar/day';
import { type Tx, transaction } from '@/lib/db/transaction';
import { balanceOf, isPriceOpen, type PaymentPurpose } from '@/lib/invoices/rules/balance';
import { moneyOfJob } from '@/lib/invoices/stored-money';
import { keptRefunds } from '@/lib/invoices/stored-refunds';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { paysPostage } from '@/lib/warranty/stored-ruling';
import { paidBack, writePostageOfClaim } from '@/lib/warranty/write-closed-claim';
import { readWorkshop } from '@/lib/workshop/records';
import type { ByStaff } from './actor';
import { readStage } from './records';
import { isOwedWaived } from './rules/decision';
import { waitsForAddress } from './rules/handover';
import { NO_MORE_NEWS } from './rules/stage-sets';
import { ADDRESS_EVENTS } from './stored-decision';
import { writeEvent } from './write-event';
import { idOfSent, writeOnce } from './write-once';
import { takeUpAnswered } from './write-unclaimed';

export const PAYMENT_METHODS = ['bank transfer', 'card', 'cash', 'pay link'] as const;

/**
 * Keeps a payment and thanks the customer; a negative amount is money given back. A unit that was set aside as unclaimed is
 * taken up again by the payment that settles it.
 *
 * The same money entered on two screens must not count twice: each names what its form showed, and whoever comes
 * second, once the job is locked, is told of the first and records nothing.
 */
export async function recordPayment(
  o: ByStaff & {
    jobId: string;
    amount: number;
    /** claim-postage: what the customer spent on posting a unit under a covered claim, paid back as an amount below zero; one above it corrects an entry */
    purpose?: PaymentPurpose;
    method: (typeof PAYMENT_METHODS)[number];
    reference: string;
    receivedOn: Day;
    /** what the form it was entered on showed: what was left to pay, and how many payments; absent where there was none */
    shown?: { owed: number; payments: number };
    /** false where the entry corrects another: nothing was paid or given back, so nothing is told */
    tell?: boolean;
    formKey?: string | undefined;
  },
): Promise<void> {
  await writeOnce('payment_pkey', () =>
    transaction(async (tx) => {
      if (o.amount === 0) throw new Refusal('invalid', 'Enter an amount other than 0', 'amount');
      requireReceived(o.receivedOn, dayInZone(o.now, (await readWorkshop(tx)).timeZone));
      const job = await moneyOfJob(tx, o.jobId);
      const quote = job?.quotes[0];
      if (!job || !quote) throw new Refusal('not-found', 'There is no such job.');
      const purpose = o.purpose ?? 'price';
      const isPostage = purpose === 'claim-postage';
      if (isPostage && o.amount < 0) await requireCoveredClaim(tx, o.jobId);
      const payment = await tx.payment.create({
        data: {
          ...idOfSent(o.formKey, [o.jobId, o.amount, purpose, o.method, o.reference, o.receivedOn]),
          jobId: o.jobId,
          amountMinor: o.amount,
          purpose,
          currency: quote.currency,
          method: o.method,
          reference: o.reference,
          receivedOn: dayToDate(o.receivedOn),
          at: o.now,
          userId: o.actor.id,
        },
        select: { id: true },
      });
      await writeEvent(tx, {
        jobId: o.jobId,
        actor: o.actor,
        now: o.now,
        event: {
          kind: 'payment-recorded',
          data: { paymentId: payment.id, amount: o.amount, ...(isPostage && { isPostage }) },
        },
      });
      // The event's write has locked the job, so every payment before this one is seen here.
      const after = (await moneyOfJob(tx, o.jobId)) ?? job;
      const { owed } = balanceOf(after);
      const owedBefore = owed + (purpose === 'price' ? o.amount : 0);
      if (o.shown && (o.shown.owed !== owedBefore || o.shown.payments !== after.payments.length - 1))
        throw new Refusal('conflict', CHANGED);
      const postageLeft = isPostage ? await writePostage(tx, { ...o, paid: paidBack(after) }) : 0;
      if (after.stage === 'unclaimed' && owedBefore > 0 && owed <= 0)
        await takeUpAnswered(tx, { ...o, note: 'Everything is paid' });
      if (o.tell === false) return;
      await queueMail(tx, {
        template: 'payment-received',
        data: {
          amount: o.amount,
          balance: owed,
          ...(isPostage && { isPostage, ...(postageLeft > 0 && { postageLeft }) }),
          ...(isPriceOpen(after) && { isPriceOpen: true }),
          ...(NO_MORE_NEWS.includes(readStage(after.stage)) && { isOver: true }),
          ...(o.amount > 0 && (await howItLeaves(tx, { jobId: o.jobId, owed }))),
        },
        to: job.customer.email,
        jobId: o.jobId,
        now: o.now,
      });
    }),
  );
  keptRefunds.forget();
}

const CHANGED =
  'What is left to pay changed while you had this open, so nothing was recorded. Look at the payments before you enter it again.';

/**
 * Whether the unit goes back once what is left is paid, read after the payment, which may have taken it up again: a unit whose
 * parcel came back waits for an address as well. Where the owner decided so, it leaves although something stays owed.
 */
async function howItLeaves(
  tx: Tx,
  { jobId, owed }: { jobId: string; owed: number },
): Promise<{ isReady?: true; isWaived?: true }> {
  const job = await tx.job.findUniqueOrThrow({
    where: { id: jobId },
    select: { stage: true, events: ADDRESS_EVENTS },
  });
  if (waitsForAddress(job.events)) return {};
  const isWaived = owed > 0 && isOwedWaived(job.events);
  if (readStage(job.stage) === 'ready') return { isReady: true, ...(isWaived && { isWaived }) };
  // The payment that settles it takes an unclaimed unit up again.
  return job.stage === 'unclaimed' && owed > 0 && !isWaived ? { isReady: true } : {};
}

/** Money that was not received yet is none. */
function requireReceived(receivedOn: Day, today: Day): void {
  if (compareDays(receivedOn, today) <= 0) return;
  throw new Refusal('invalid', 'Enter the day it was received: today or before', 'receivedOn');
}

async function requireCoveredClaim(tx: Tx, jobId: string): Promise<void> {
  const claim = await tx.claim.findUnique({
    where: { jobId },
    select: { cause: true, ruling: true, secondLookAt: true },
  });
  if (!paysPostage(claim)) {
    throw new Refusal('invalid', 'Postage is paid back on a claim that was ruled covered', 'purpose');
  }
}

/** An entry above zero takes back one that was a mistake, whatever was ruled since, and never more than was paid back. */
async function writePostage(tx: Tx, o: { jobId: string; amount: number; paid: number }): Promise<number> {
  if (o.paid < 0) {
    throw new Refusal(
      'invalid',
      'Postage that is paid back is entered with a minus sign; without one, no more than an entry before it',
      'amount',
    );
  }
  return writePostageOfClaim(tx, { jobId: o.jobId, postage: -o.amount, paid: o.paid });
}
