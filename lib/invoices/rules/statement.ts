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
        (a.on < b.on ? -1 : a.on > b.on ? 1 : 0) ||
        ORDER[a.kind] - ORDER[b.kind] ||
        (a.what < b.what ? -1 : 1),
    )
    .map((entry) => {
      balance += entry.amount;
      return { ...entry, balance };
    });
}
