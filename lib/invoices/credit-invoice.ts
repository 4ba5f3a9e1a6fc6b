import { type Tx, transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { lockJob } from '@/lib/jobs/write-lock';
import { idOfSent, writeOnce } from '@/lib/jobs/write-once';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { balanceOf } from './rules/balance';
import { type CreditReading, creditField, creditTotals, leftToCredit } from './rules/credit';
import { type InvoiceFacts, type InvoiceLineFacts, readInvoice, WHOLE_INVOICE } from './stored-invoice';
import { moneyOfJob } from './stored-money';
import { writeInvoice } from './write-invoice';

export type CreditAsked = ByStaff & {
  number: string;
  /** everything that is left, or amounts of single lines by their position, as the invoice has them */
  choice: 'everything' | ReadonlyMap<number, number>;
  reason: string;
  /** what the form said was left of the invoice, minor units; absent where nobody was shown anything */
  shownLeft?: number | undefined;
  formKey?: string | undefined;
};

/**
 * Issues a credit note: an invoice is never edited, so whatever was wrong in it is taken off by one of these. How much is left is
 * decided while the invoice's row is locked; of two who credit the same thing at once the second, who was shown more than is left
 * by then, is told so, and credits nothing.
 */
export async function creditInvoice(o: CreditAsked): Promise<void> {
  await writeOnce('invoice_pkey', () => transaction((tx) => credit(tx, o)));
}

async function credit(tx: Tx, o: CreditAsked): Promise<void> {
  const { invoice, credits } = await lockInvoice(tx, o.number);
  const sent = idOfSent(o.formKey, [o.number, o.choice, o.reason]);
  // Pressed twice: the first press has issued it.
  if (credits.some(({ id }) => id === sent.id)) return;
  if (o.shownLeft !== undefined && o.shownLeft !== leftToCredit(invoice, credits).payable)
    throw new Refusal('conflict', CHANGED);
  const chosen = o.choice === 'everything' ? leftToCredit(invoice, credits).byPosition : o.choice;
  const reading = creditTotals(invoice, credits, chosen);
  if (!reading.ok) throw refusal(reading);
  const { timeZone } = await readWorkshop(tx);
  const written = await writeInvoice(tx, {
    ...invoice,
    // Never the invoice's own, also where no form gave a key.
    id: sent.id,
    corrects: { id: invoice.id, number: invoice.number },
    reason: o.reason,
    totals: reading.totals,
    dueDays: 0,
    timeZone,
    actor: o.actor,
    now: o.now,
  });
  const job = await moneyOfJob(tx, invoice.jobId);
  if (!job) throw new Error('an invoice without its job');
  await queueMail(tx, {
    template: 'credit-note-issued',
    data: {
      number: written.number,
      invoice: invoice.number,
      amount: written.payable,
      reason: o.reason,
      balance: balanceOf(job).owed,
    },
    to: job.customer.email,
    jobId: invoice.jobId,
    now: o.now,
  });
}

/** The invoice with its credit notes; nobody else credits it until the transaction ends. The job is locked first, as everywhere. */
async function lockInvoice(
  tx: Tx,
  number: string,
): Promise<{ invoice: InvoiceFacts; credits: InvoiceFacts[] }> {
  const found = await tx.invoice.findUnique({
    where: { number },
    select: { id: true, jobId: true, kind: true },
  });
  if (found?.kind !== 'invoice') throw new Refusal('not-found', 'There is no such invoice.');
  await lockJob(tx, found.jobId);
  await tx.$queryRaw`SELECT 1 FROM "invoice" WHERE "id" = ${found.id} FOR UPDATE`;
  const row = await tx.invoice.findUniqueOrThrow({ where: { id: found.id }, include: WHOLE_INVOICE });
  const corrections = await tx.invoice.findMany({
    where: { correctsId: found.id },
    include: WHOLE_INVOICE,
    orderBy: { issuedAt: 'asc' },
  });
  return { invoice: readInvoice(row), credits: corrections.map(readInvoice) };
}

const CHANGED =
  'Part of this invoice was credited while you had it open, so nothing was issued. Load the page to see what is left.';

function refusal(reading: Extract<CreditReading<InvoiceLineFacts>, { ok: false }>): Refusal {
  if (reading.reason === 'nothing')
    return new Refusal('invalid', 'Choose something to credit that is not credited yet.');
  return new Refusal(
    'invalid',
    'This is more than is left of the invoice. Part of it may have been credited just now.',
    reading.position === null ? undefined : creditField(reading.position),
  );
}
