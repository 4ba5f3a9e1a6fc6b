import { dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { sameButForCapitals } from '@/lib/db/like';
import { type Entry, type StatementRow, statementRows } from './rules/statement';

export type Statement = { name: string; email: string; currency: string; rows: StatementRow[]; owed: number };

/**
 * The account of a customer, found by one of their jobs: every invoice, credit note and payment of all jobs booked with
 * the same e-mail address, whatever its capitals; of that job alone once the address was removed. Null for a job that is
 * not there.
 */
export async function statementOf(jobId: string, currency: string): Promise<Statement | null> {
  const job = await db.job.findUnique({ where: { id: jobId }, select: { customer: true } });
  if (!job) return null;
  const { name, email } = job.customer;
  const jobs = await db.job.findMany({
    where: email === '' ? { id: jobId } : { customer: { email: sameButForCapitals(email) } },
    select: {
      number: true,
      invoices: { select: { kind: true, number: true, issuedOn: true, payableMinor: true } },
      payments: {
        where: { purpose: 'price' },
        select: { amountMinor: true, receivedOn: true, method: true, reference: true },
      },
    },
  });
  const rows = statementRows(jobs.flatMap(entriesOf));
  return {
    name,
    email,
    currency,
    rows,
    owed: rows.at(-1)?.balance ?? 0,
  };
}

type JobRow = {
  number: string;
  invoices: { kind: string; number: string; issuedOn: Date; payableMinor: number }[];
  payments: { amountMinor: number; receivedOn: Date; method: string; reference: string }[];
};

function entriesOf(job: JobRow): Entry[] {
  return [
    ...job.invoices.map((paper): Entry => {
      const isInvoice = paper.kind === 'invoice';
      return {
        on: dayFromDate(paper.issuedOn),
        kind: isInvoice ? 'invoice' : 'credit-note',
        what: paper.number,
        job: job.number,
        amount: isInvoice ? paper.payableMinor : -paper.payableMinor,
      };
    }),
    ...job.payments.map(
      (payment): Entry => ({
        on: dayFromDate(payment.receivedOn),
        kind: payment.amountMinor < 0 ? 'given-back' : 'payment',
        what: [payment.method, payment.reference].filter((text) => text !== '').join(', '),
        job: job.number,
        amount: -payment.amountMinor,
      }),
    ),
  ];
}
