import { config } from '@/lib/config';
import type { InvoiceData } from '@/lib/documents/invoice';
import type { WorkshopCard } from '@/lib/workshop/card';
import { letterheadOf } from '@/lib/workshop/rules/letterhead';
import type { WholeInvoice } from './records';
import { waysToPay } from './rules/ways-to-pay';

/** Everything the document of an invoice or credit note says; paper size and language are the workshop's of the day. */
export function invoiceData(
  { facts, paper, job }: WholeInvoice,
  workshop: Pick<WorkshopCard, 'paper' | 'locale'>,
): InvoiceData {
  const { seller } = facts;
  return {
    setting: { paper: workshop.paper, locale: workshop.locale, made: facts.issuedAt },
    workshop: letterheadOf(seller),
    paper: { ...paper, lines: facts.lines },
    isGross: facts.isGross,
    job: job.number,
    unit: { model: job.unit, serial: job.serial },
    statusUrl: `${config.appUrl}/track/${job.number}`,
    ways:
      facts.kind === 'invoice'
        ? waysToPay(seller, {
            amount: paper.payable - paper.prepaid,
            currency: facts.currency,
            reference: facts.number,
          })
        : null,
  };
}
