import type { Day } from '@/lib/calendar/day';

export type Entry = {
  on: Day;
  kind: 'invoice' | 'credit-note' | 'payment' | 'given-back';
  /** number of the document, or how it was paid */
  what: string;
  job: string;
  /** what it adds to what is owed, minor units: an invoice above zero, a credit note or payment below */
  amount: number;
};

export type StatementRow = Entry & { balance: number };

const ORDER = { invoice: 0, 'credit-note': 1, payment: 2, 'given-back': 3 } as const;

/**
 * A customer's account in the order of days with what is owed after each entry; the last balance is what is owed now, below
 * zero when there is money to give back. Invoices of a day come before credit notes, and those before payments.
 */
export function statementRows(entries: readonly Entry[]): StatementRow[] {
  let balance = 0;
  return entries
    .toSorted(
      (a, b) =>
        byText(a.on, b.on) ||
        ORDER[a.kind] - ORDER[b.kind] ||
        byText(a.what, b.what) ||
        byText(a.job, b.job) ||
        a.amount - b.amount,
    )
    .map((entry) => {
      balance += entry.amount;
      return { ...entry, balance };
    });
}

function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
