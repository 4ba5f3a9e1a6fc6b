import { type Day, dayFromDate } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';
import { type Balance, balanceOf, isForPrice } from './rules/balance';
import { type CreditLeft, leftToCredit } from './rules/credit';
import type { Paper } from './rules/paper';
import { prepaidOf } from './rules/prepaid';
import { type InvoiceFacts, readInvoice, WHOLE_INVOICE } from './stored-invoice';

const WITH_JOB = {
  ...WHOLE_INVOICE,
  corrects: { select: { number: true, issuedOn: true } },
  corrections: { include: WHOLE_INVOICE, orderBy: [{ year: 'asc' }, { sequence: 'asc' }] },
  job: {
    select: {
      id: true,
      number: true,
      serialTyped: true,
      model: { select: { maker: true, name: true } },
      quotes: { select: { revisions: { select: { state: true, grossMinor: true } } } },
      invoices: { select: { kind: true, payableMinor: true, issuedAt: true, year: true, sequence: true } },
      payments: { select: { amountMinor: true, purpose: true, at: true } },
    },
  },
} satisfies Prisma.InvoiceInclude;

type Row = Prisma.InvoiceGetPayload<{ include: typeof WITH_JOB }>;

/** An invoice or credit note with everything that is shown beside it. */
export type WholeInvoice = {
  facts: InvoiceFacts;
  paper: Paper;
  file: { fileKey: string; sha256: string } | null;
  job: { id: string; number: string; unit: string; serial: string; balance: Balance };
  corrects: { number: string; issuedOn: Day } | null;
  /** credit notes on it */
  credits: InvoiceFacts[];
  /** what can still be credited; null on a credit note */
  left: CreditLeft | null;
};

export async function readWholeInvoice(number: string, client: Tx = db): Promise<WholeInvoice | null> {
  const row = await client.invoice.findUnique({ where: { number }, include: WITH_JOB });
  return row && whole(row);
}

/** Every invoice and credit note of a job, in the order of their numbers. */
export async function papersOfJob(jobId: string): Promise<InvoiceFacts[]> {
  const rows = await db.invoice.findMany({
    where: { jobId },
    include: WHOLE_INVOICE,
    orderBy: [{ year: 'asc' }, { sequence: 'asc' }],
  });
  return rows.map(readInvoice);
}

function whole(row: Row): WholeInvoice {
  const facts = readInvoice(row);
  const { job } = row;
  const credits = row.corrections.map(readInvoice);
  const corrects = row.corrects && {
    number: row.corrects.number,
    issuedOn: dayFromDate(row.corrects.issuedOn),
  };
  return {
    facts,
    corrects,
    paper: { ...facts, corrects, prepaid: facts.kind === 'invoice' ? prepaid(row) : 0 },
    file: row.fileKey !== null && row.sha256 !== null ? { fileKey: row.fileKey, sha256: row.sha256 } : null,
    job: {
      id: job.id,
      number: job.number,
      unit: unitName(job.model),
      serial: job.serialTyped,
      balance: balanceOf(job),
    },
    credits,
    left: facts.kind === 'invoice' ? leftToCredit(facts, credits) : null,
  };
}

function prepaid(row: Row): number {
  const isEarlier = (other: { year: number; sequence: number }) =>
    other.year < row.year || (other.year === row.year && other.sequence < row.sequence);
  return prepaidOf({
    payable: row.payableMinor,
    received: row.job.payments
      .filter((payment) => isForPrice(payment) && payment.at <= row.issuedAt)
      .reduce((sum, payment) => sum + payment.amountMinor, 0),
    earlier: row.job.invoices
      .filter(isEarlier)
      .map((other) => ({ kind: other.kind, payable: other.payableMinor })),
  });
}
