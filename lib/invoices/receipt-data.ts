import { dayFromDate } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { config } from '@/lib/config';
import type { Price } from '@/lib/documents/money-sheet';
import type { ReceiptData } from '@/lib/documents/receipt';
import { type JobRecord, readStage, stagesReached } from '@/lib/jobs/records';
import { datedStamps } from '@/lib/jobs/rules/run-of-stamps';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { revisionTotals, shownLines, taxOnPaper } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';
import type { WorkshopCard } from '@/lib/workshop/card';
import { letterheadOf } from '@/lib/workshop/rules/letterhead';
import { papersOfJob } from './records';
import { isForPrice, isPriceOpen } from './rules/balance';
import { type StandingPrice, standingPrice } from './rules/standing-price';
import type { InvoiceLineFacts } from './stored-invoice';
import { type Seller, sellerOf } from './stored-parties';

/**
 * Everything the receipt of a job says; null while nothing was paid. Once invoiced it names the tax, the rounding and the seller
 * as the invoices do, less their credit notes; before, as the agreed price has them; and no price at all while none is agreed.
 */
export async function receiptData(job: JobRecord, workshop: WorkshopCard): Promise<ReceiptData | null> {
  const agreed = agreedOf(job);
  const payments = job.payments.filter(isForPrice);
  const last = payments.at(-1);
  if (!agreed || !last) return null;
  const papers = job.invoices.length > 0 ? await papersOfJob(job.id) : [];
  const invoice = papers.findLast(({ kind }) => kind === 'invoice');
  const seller = invoice?.seller ?? sellerOf(workshop);
  const currency = job.quotes[0]?.currency ?? workshop.currency;
  const standing = invoice ? standingPrice(papers) : null;
  return {
    setting: { paper: workshop.paper, locale: workshop.locale, made: last.at },
    workshop: letterheadOf(seller),
    job: job.number,
    invoice: invoice?.number ?? null,
    customer: job.customer.name,
    unit: { model: unitName(job.model), serial: job.serialTyped },
    statusUrl: `${config.appUrl}/track/${job.number}`,
    stamps: datedStamps(readStage(job.stage), stagesReached(job.events), workshop.timeZone),
    price: standing ? invoiced(standing, currency, seller) : agreedPrice(job, currency, seller),
    currency,
    credited: standing?.credited ?? 0,
    payments: payments.map((payment) => ({
      amount: payment.amountMinor,
      on: dayFromDate(payment.receivedOn),
      method: payment.method,
      reference: payment.reference || null,
    })),
    next: [],
  };
}

function invoiced(standing: StandingPrice<InvoiceLineFacts>, currency: string, seller: Seller): Price {
  const { mode, lines, breakdown, net, tax, rounding, payable } = standing;
  return {
    currency,
    mode,
    lines: shownLines(lines).map((line) => ({ ...line, quantity: '' })),
    totals: { net, tax, gross: payable, breakdown },
    rounding,
    ...taxOnPaper(lines, breakdown, seller),
  };
}

function agreedPrice(job: JobRecord, currency: string, seller: Seller): Price | null {
  const agreed = agreedOf(job);
  if (!agreed || isPriceOpen(job)) return null;
  const lines = agreed.lines.map(readLine);
  const totals = revisionTotals(lines, agreed.isGross);
  return {
    currency,
    mode: agreed.isGross ? 'gross' : 'net',
    lines: shownLines(lines).map((line) => ({ ...line, quantity: '' })),
    totals,
    ...taxOnPaper(lines, totals.breakdown, seller),
  };
}
