import { type Day, dayToDate } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import type { Actor } from './actor';
import { writeEvent } from './write-event';
import { writeOnce } from './write-once';

export const PAYMENT_METHODS = ['bank transfer', 'card', 'cash', 'pay link'] as const;

/** Keeps a payment; a negative amount is money given back. */
export async function recordPayment(o: {
  jobId: string;
  amount: number;
  method: (typeof PAYMENT_METHODS)[number];
  reference: string;
  receivedOn: Day;
  formKey?: string | undefined;
  actor: Extract<Actor, { id: string }>;
  now: Date;
}): Promise<void> {
  await writeOnce('payment_pkey', () =>
    transaction(async (tx) => {
      const quote = await tx.quote.findUnique({ where: { jobId: o.jobId }, select: { currency: true } });
      if (!quote) throw new Refusal('not-found', 'There is no such job.');
      const payment = await tx.payment.create({
        data: {
          ...(o.formKey === undefined ? {} : { id: o.formKey }),
          jobId: o.jobId,
          amountMinor: o.amount,
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
        event: { kind: 'payment-recorded', data: { paymentId: payment.id, amount: o.amount } },
      });
    }),
  );
}
