import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { readStage } from '@/lib/jobs/records';
import { lockJob } from '@/lib/jobs/write-lock';
import { readLine } from '@/lib/quotes/stored-lines';
import { readWorkshop } from '@/lib/workshop/records';
import { saysTheSame, standingInvoices, supplyDay } from './rules/standing';
import { invoiceTotals } from './rules/totals';
import { readInvoice, WHOLE_INVOICE } from './stored-invoice';
import { buyerOf, sellerOf } from './stored-parties';
import { creditTheRest } from './write-credit';
import { type WrittenInvoice, writeInvoice } from './write-invoice';

const PRICE_CHANGED = 'The agreed price changed after the invoice was issued';

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
    suppliedOn: supplyDay({ stage: readStage(job.stage), readyAt: job.readyAt }, workshop.timeZone),
    dueDays: workshop.dueDays,
    timeZone: workshop.timeZone,
    seller: sellerOf(workshop),
    buyer: buyerOf(job.customer),
    actor: o.actor,
    now: o.now,
  });
}
