import { addDays, type Day, dayInZone, dayToDate } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { type Actor, actorId } from '@/lib/jobs/actor';
import type { Stage } from '@/lib/jobs/rules/stages';
import { writeEvent } from '@/lib/jobs/write-event';
import { lockJob } from '@/lib/jobs/write-lock';
import type { QuoteLine } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';
import { readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import type { InvoicedLine } from './rules/credit';
import { creditTotals, leftToCredit } from './rules/credit';
import { invoiceNumber } from './rules/number';
import { type InvoiceTotals, invoiceTotals } from './rules/totals';
import { type InvoiceFacts, readInvoice, WHOLE_INVOICE } from './stored-invoice';
import { type Buyer, buyerOf, type Seller, sellerOf } from './stored-parties';

export type WrittenInvoice = { id: string; number: string; payable: number; dueOn: Day };

type LineToWrite = InvoicedLine & { kind: string; description: string };

export type InvoiceWrite = {
  /** a form's own key, which makes sending it twice harmless */
  id?: string | undefined;
  jobId: string;
  corrects: { id: string; number: string } | null;
  reason: string;
  currency: string;
  isGross: boolean;
  totals: InvoiceTotals<LineToWrite>;
  suppliedOn: Day | null;
  dueDays: number;
  timeZone: string;
  seller: Seller;
  buyer: Buyer;
  actor: Actor;
  now: Date;
};

/**
 * Writes one invoice or credit note with the next number of its year.
 *
 * The number is taken last, in the caller's transaction: its row stays locked until that commits, so the next one waits,
 * and a transaction that is rolled back gives its number back. Nothing is left out and nothing given twice
 * (VAT Directive 2006/112/EC Art. 226(2)).
 */
export async function writeInvoice(tx: Tx, o: InvoiceWrite): Promise<WrittenInvoice> {
  const issuedOn = dayInZone(o.now, o.timeZone);
  const year = Number(issuedOn.slice(0, 4));
  const dueOn = o.corrects ? issuedOn : addDays(issuedOn, o.dueDays);
  const { totals } = o;
  const sequence = await takeNumber(tx, year);
  const number = invoiceNumber(year, sequence);
  const { id } = await tx.invoice.create({
    data: {
      ...(o.id === undefined ? {} : { id: o.id }),
      kind: o.corrects ? 'credit-note' : 'invoice',
      year,
      sequence,
      number,
      jobId: o.jobId,
      correctsId: o.corrects?.id ?? null,
      reason: o.reason,
      currency: o.currency,
      isGross: o.isGross,
      issuedOn: dayToDate(issuedOn),
      suppliedOn: o.suppliedOn && dayToDate(o.suppliedOn),
      dueOn: dayToDate(dueOn),
      issuedAt: o.now,
      userId: actorId(o.actor),
      seller: o.seller,
      buyer: o.buyer,
      netMinor: totals.net,
      taxMinor: totals.tax,
      roundingMinor: totals.rounding,
      payableMinor: totals.payable,
      lines: {
        create: totals.lines.map((line) => ({
          position: line.position,
          kind: line.kind,
          description: line.description,
          amountMinor: line.amount,
          netMinor: line.net,
          taxCategory: line.category,
          taxRateBps: line.rateBps,
        })),
      },
      taxes: {
        create: totals.breakdown.map((part) => ({
          category: part.category,
          rateBps: part.rateBps,
          baseMinor: part.base,
          taxMinor: part.tax,
        })),
      },
    },
    select: { id: true },
  });
  await writeEvent(tx, {
    jobId: o.jobId,
    actor: o.actor,
    now: o.now,
    event: o.corrects
      ? {
          kind: 'credit-note-issued',
          data: { number, invoice: o.corrects.number, payable: totals.payable },
        }
      : { kind: 'invoice-issued', data: { number, payable: totals.payable } },
  });
  return { id, number, payable: totals.payable, dueOn };
}

async function takeNumber(tx: Tx, year: number): Promise<number> {
  const rows = await tx.$queryRaw<{ last: number }[]>`
    INSERT INTO "invoice_series" ("year", "last") VALUES (${year}, 1)
    ON CONFLICT ("year") DO UPDATE SET "last" = "invoice_series"."last" + 1
    RETURNING "last"`;
  const [row] = rows;
  if (!row) throw new Error('no invoice number was given');
  return row.last;
}

/**
 * Issues the invoice of a job's agreed price, in the transaction of the change that makes it due; null when there is
 * nothing to invoice: an agreed price of 0, as under warranty, or one that is invoiced already.
 *
 * Where an invoice of other lines stands, because the price or the work changed after it was issued, what is left of it is
 * credited first: an issued invoice is never edited.
 */
export async function issueForJob(
  tx: Tx,
  o: { jobId: string; actor: Actor; now: Date },
): Promise<WrittenInvoice | null> {
  await lockJob(tx, o.jobId);
  const job = await tx.job.findUniqueOrThrow({
    where: { id: o.jobId },
    select: {
      stage: true,
      readyAt: true,
      customer: true,
      quotes: {
        select: {
          currency: true,
          revisions: {
            where: { state: 'accepted' },
            select: { grossMinor: true, isGross: true, lines: { orderBy: { position: 'asc' } } },
          },
        },
      },
      invoices: { include: WHOLE_INVOICE, orderBy: { sequence: 'asc' } },
    },
  });
  const [quote] = job.quotes;
  const [agreed] = quote?.revisions ?? [];
  if (!quote || !agreed) return null;
  const workshop = await readWorkshop(tx);
  const standing = standingInvoices(job.invoices.map(readInvoice));
  const lines = agreed.lines.map((line, position) => ({ ...readLine(line), position }));
  if (standing.some(({ invoice }) => saysTheSame(invoice, { lines, isGross: agreed.isGross }))) return null;
  for (const each of standing) await creditTheRest(tx, { ...each, ...o, workshop, reason: PRICE_CHANGED });
  if (agreed.grossMinor <= 0) return null;
  return writeInvoice(tx, {
    jobId: o.jobId,
    corrects: null,
    reason: '',
    currency: quote.currency,
    isGross: agreed.isGross,
    totals: invoiceTotals(lines, agreed.isGross),
    suppliedOn: job.readyAt && DONE.has(job.stage) ? dayInZone(job.readyAt, workshop.timeZone) : null,
    dueDays: workshop.dueDays,
    timeZone: workshop.timeZone,
    seller: sellerOf(workshop),
    buyer: buyerOf(job.customer),
    actor: o.actor,
    now: o.now,
  });
}

/**
 * Stages in which the work is done. Before, nobody can say on which day it will be: the law asks for it only where it can be
 * determined (VAT Directive 2006/112/EC Art. 226(7)). A unit that is looked at again keeps the day it was ready before.
 */
const DONE: ReadonlySet<string> = new Set<Stage>(['ready', 'unclaimed', 'sent-back', 'closed']);

/** Credits whatever is left of a job's invoices, where a job ends before anything was done for it. */
export async function creditStanding(
  tx: Tx,
  o: { jobId: string; reason: string; actor: Actor; now: Date },
): Promise<void> {
  await lockJob(tx, o.jobId);
  const rows = await tx.invoice.findMany({
    where: { jobId: o.jobId },
    include: WHOLE_INVOICE,
    orderBy: [{ year: 'asc' }, { sequence: 'asc' }],
  });
  if (rows.length === 0) return;
  const workshop = await readWorkshop(tx);
  for (const each of standingInvoices(rows.map(readInvoice)))
    await creditTheRest(tx, { ...each, ...o, workshop });
}

type Priced = { isGross: boolean; lines: readonly QuoteLine[] };

/** Another work at the same price is another invoice: what was supplied and its tax are what an invoice is about. */
function saysTheSame(invoiced: Priced, agreed: Priced): boolean {
  const said = ({ lines, isGross }: Priced) =>
    JSON.stringify([
      isGross,
      ...lines.map((line) => [line.kind, line.description, line.amount, line.category, line.rateBps]),
    ]);
  return said(invoiced) === said(agreed);
}

const PRICE_CHANGED = 'The agreed price changed after the invoice was issued';

type Standing = { invoice: InvoiceFacts; credits: InvoiceFacts[] };

/** Invoices of which something is not credited yet, each with its credit notes. */
function standingInvoices(papers: readonly InvoiceFacts[]): Standing[] {
  return papers
    .filter((paper) => paper.kind === 'invoice')
    .map((invoice) => ({ invoice, credits: papers.filter((paper) => paper.correctsId === invoice.id) }))
    .filter(({ invoice, credits }) => leftToCredit(invoice, credits).payable > 0);
}

async function creditTheRest(
  tx: Tx,
  o: Standing & { workshop: WorkshopCard; reason: string; actor: Actor; now: Date },
): Promise<void> {
  const left = leftToCredit(o.invoice, o.credits);
  const credit = creditTotals(o.invoice, o.credits, left.byPosition);
  if (!credit.ok) throw new Error(`what is left of invoice ${o.invoice.number} could not be credited`);
  await writeInvoice(tx, {
    ...o.invoice,
    id: undefined,
    corrects: { id: o.invoice.id, number: o.invoice.number },
    reason: o.reason,
    totals: credit.totals,
    dueDays: 0,
    timeZone: o.workshop.timeZone,
    actor: o.actor,
    now: o.now,
  });
}
