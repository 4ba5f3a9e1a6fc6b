import { addDays, type Day, dayInZone, dayToDate } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { type Actor, actorId } from '@/lib/jobs/actor';
import { writeEvent } from '@/lib/jobs/write-event';
import type { InvoicedLine } from './rules/credit';
import { invoiceNumber } from './rules/number';
import type { InvoiceTotals } from './rules/totals';
import type { Buyer, Seller } from './stored-parties';

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
