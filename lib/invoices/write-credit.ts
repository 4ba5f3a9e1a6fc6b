import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { lockJob } from '@/lib/jobs/write-lock';
import { readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { creditTotals, leftToCredit } from './rules/credit';
import { type Standing, standingInvoices } from './rules/standing';
import { type InvoiceFacts, readInvoice, WHOLE_INVOICE } from './stored-invoice';
import { writeInvoice } from './write-invoice';

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

/** Credits what is left of one invoice, in the caller's transaction. */
export async function creditTheRest(
  tx: Tx,
  o: Standing<InvoiceFacts> & { workshop: WorkshopCard; reason: string; actor: Actor; now: Date },
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
