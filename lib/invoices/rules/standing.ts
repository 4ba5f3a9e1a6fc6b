import { type Day, dayInZone } from '@/lib/calendar/day';
import type { Stage } from '@/lib/jobs/rules/stages';
import { safeSum } from '@/lib/money/amount';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import type { QuoteLine } from '@/lib/quotes/rules/lines';
import type { MoneyOfJob } from './balance';
import { type Issued, leftToCredit } from './credit';

type Priced = { isGross: boolean; lines: readonly QuoteLine[] };

/** Another work at the same price is another invoice: what was supplied and its tax are what an invoice is about. */
export function saysTheSame(invoiced: Priced, agreed: Priced): boolean {
  const said = ({ lines, isGross }: Priced) =>
    JSON.stringify([
      isGross,
      ...lines.map((line) => [line.kind, line.description, line.amount, line.category, line.rateBps]),
    ]);
  return said(invoiced) === said(agreed);
}

/**
 * Whether a job's invoice can be issued by hand: something is agreed to pay, the job was not cancelled, and nothing is invoiced, or
 * all of it credited.
 */
export function mayInvoice(job: MoneyOfJob): boolean {
  const ofKind = (kind: string) =>
    job.invoices.filter((paper) => paper.kind === kind).map((paper) => paper.payableMinor);
  const left = safeSum(ofKind('invoice')) - safeSum(ofKind('credit-note'));
  return left === 0 && (agreedOf(job)?.grossMinor ?? 0) > 0 && job.stage !== 'cancelled';
}

export type Standing<P> = { invoice: P; credits: P[] };

/** Invoices of which something is not credited yet, each with its credit notes. */
export function standingInvoices<P extends Paper>(papers: readonly P[]): Standing<P>[] {
  return papers
    .filter((paper) => paper.kind === 'invoice')
    .map((invoice) => ({ invoice, credits: papers.filter((paper) => paper.correctsId === invoice.id) }))
    .filter(({ invoice, credits }) => leftToCredit(invoice, credits).payable > 0);
}

type Paper = Issued & { id: string; kind: string; correctsId: string | null };

/** Where the work is done: nothing more is supplied after it. */
const WORK_DONE: readonly Stage[] = ['ready', 'unclaimed', 'sent-back', 'closed'];

/**
 * The day of supply that an invoice names: the one on which the work was done. Before, nobody can say which it will be, and the
 * law asks for it only where it can be determined (VAT Directive 2006/112/EC Art. 226(7)). A unit that is looked at again keeps
 * the day it was ready before.
 */
export function supplyDay(job: { stage: Stage; readyAt: Date | null }, timeZone: string): Day | null {
  return job.readyAt && WORK_DONE.includes(job.stage) ? dayInZone(job.readyAt, timeZone) : null;
}
