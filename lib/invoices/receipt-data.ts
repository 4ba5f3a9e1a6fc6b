import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { config } from '@/lib/config';
import type { ReceiptData } from '@/lib/documents/receipt';
import { type JobRecord, readStage, stagesReached } from '@/lib/jobs/records';
import { runOfStamps } from '@/lib/jobs/rules/run-of-stamps';
import { STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { revisionTotals, shownLines, taxNameOf } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';
import type { WorkshopCard } from '@/lib/workshop/card';
import { balanceOf, isForPrice } from './rules/balance';

/** Everything the receipt of a job says; null while nothing was paid. */
export function receiptData(job: JobRecord, workshop: WorkshopCard): ReceiptData | null {
  const agreed = agreedOf(job);
  const payments = job.payments.filter(isForPrice);
  const last = payments.at(-1);
  if (!agreed || !last) return null;
  const lines = agreed.lines.map(readLine);
  const { total } = balanceOf(job);
  const totals = revisionTotals(lines, agreed.isGross);
  const isExempt = totals.breakdown.some((part) => part.category === 'E');
  return {
    setting: { paper: workshop.paper, locale: workshop.locale, made: last.at },
    workshop: {
      name: workshop.name,
      address: [...workshop.addressLines, workshop.town, workshop.postcode].filter((line) => line !== ''),
      phone: workshop.phone || null,
      email: workshop.email || null,
    },
    job: job.number,
    invoice: job.invoices.findLast((paper) => paper.kind === 'invoice')?.number ?? null,
    customer: job.customer.name,
    unit: { model: `${job.model.maker} ${job.model.name}`, serial: job.serialTyped },
    statusUrl: `${config.appUrl}/track/${job.number}`,
    stamps: runOfStamps(readStage(job.stage), stagesReached(job.events)).map((step) => ({
      label: STAGE_WORDS[step.stage].label,
      day: step.at ? dayInZone(step.at, workshop.timeZone) : null,
    })),
    price: {
      currency: job.quotes[0]?.currency ?? workshop.currency,
      mode: agreed.isGross ? 'gross' : 'net',
      lines: shownLines(lines).map((line) => ({ ...line, quantity: '' })),
      totals,
      taxName: taxNameOf(lines, workshop.taxName),
      taxNumber: workshop.taxNumber || null,
      taxNotes: isExempt && workshop.taxExemptReason !== '' ? [workshop.taxExemptReason] : [],
    },
    credited: totals.gross - total,
    payments: payments.map((payment) => ({
      amount: payment.amountMinor,
      on: dayFromDate(payment.receivedOn),
      method: payment.method,
      reference: payment.reference || null,
    })),
    next: [],
  };
}
