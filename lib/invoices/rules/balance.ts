import { safeSum } from '@/lib/money/amount';
import { agreedOf, isAgreedTo } from '@/lib/quotes/rules/agreed';

export type Balance = {
  /** what the customer has to pay in all: the agreed price, or what was invoiced less what was credited */
  total: number;
  /** received less given back */
  paid: number;
  /** still to pay; below zero when there is money to give back */
  owed: number;
};

/**
 * Where a job's money stands, in minor units; paid + owed = total always. As long as nothing was invoiced the agreed price is
 * owed; from then on what the invoices say, less the credit notes. Takes any whole amounts.
 *
 * balance({ agreedGross: 7200, invoices: [7200], credits: [1000], payments: [7200] }) -> total 6200, paid 7200, owed -1000
 */
export function balance(o: {
  agreedGross: number;
  invoices: readonly number[];
  credits: readonly number[];
  payments: readonly number[];
}): Balance {
  const total = o.invoices.length === 0 ? o.agreedGross : safeSum(o.invoices) - safeSum(o.credits);
  const paid = safeSum(o.payments);
  return { total, paid, owed: safeSum([total, -paid]) };
}

/** What money on a job is for; the customer's postage for a covered claim is paid back beside the price, never part of it. */
export const PAYMENT_PURPOSES = ['price', 'claim-postage'] as const;
export type PaymentPurpose = (typeof PAYMENT_PURPOSES)[number];

export function isForPrice(payment: { purpose: string }): boolean {
  return payment.purpose === 'price';
}

/**
 * Whether a job's price is still to be agreed: staff opened it for a parcel without a booking, and the customer has said yes to
 * nothing. What they paid until then counts towards that price, and is nothing to give back.
 */
export function isPriceOpen(job: {
  stage: string;
  quotes: readonly { revisions: readonly { state: string; revision: number; decidedBy: string | null }[] }[];
}): boolean {
  const agreed = agreedOf(job);
  return job.stage !== 'cancelled' && agreed !== undefined && !isAgreedTo(agreed);
}

/** What of a job's record its balance is made of. */
export type MoneyOfJob = {
  stage?: string;
  quotes: readonly { revisions: readonly { state: string; grossMinor: number }[] }[];
  invoices: readonly { kind: string; payableMinor: number }[];
  payments: readonly { amountMinor: number; purpose: string }[];
};

/**
 * The balance of a job from its rows: the accepted revision is the agreed price; without one, and on a job that was
 * cancelled, it is 0.
 */
export function balanceOf(job: MoneyOfJob): Balance {
  const agreed = agreedOf(job);
  const payable = (kind: string) =>
    job.invoices.filter((each) => each.kind === kind).map((each) => each.payableMinor);
  return balance({
    agreedGross: job.stage === 'cancelled' ? 0 : (agreed?.grossMinor ?? 0),
    invoices: payable('invoice'),
    credits: payable('credit-note'),
    payments: job.payments.filter(isForPrice).map((payment) => payment.amountMinor),
  });
}
