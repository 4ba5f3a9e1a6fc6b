import { z } from 'zod';
import { type Day, dayFromDate } from '@/lib/calendar/day';
import type { Prisma } from '@/lib/db/generated/client';
import type { TaxBreakdown } from '@/lib/money/tax';
import type { QuoteLine } from '@/lib/quotes/rules/lines';
import { readLine, taxCategory } from '@/lib/quotes/stored-lines';
import { type Buyer, buyer, type Seller, seller } from './stored-parties';

export const INVOICE_KINDS = ['invoice', 'credit-note'] as const;
export type InvoiceKind = (typeof INVOICE_KINDS)[number];
const invoiceKind = z.enum(INVOICE_KINDS);

export const WHOLE_INVOICE = {
  lines: { orderBy: { position: 'asc' } },
  taxes: true,
} satisfies Prisma.InvoiceInclude;

type Row = Prisma.InvoiceGetPayload<{ include: typeof WHOLE_INVOICE }>;

export type InvoiceLineFacts = QuoteLine & { position: number; net: number };

/** An invoice or credit note as it was issued. Amounts are minor units; a credit note's are positive too. */
export type InvoiceFacts = {
  id: string;
  kind: InvoiceKind;
  number: string;
  jobId: string;
  correctsId: string | null;
  reason: string;
  currency: string;
  isGross: boolean;
  issuedOn: Day;
  suppliedOn: Day | null;
  dueOn: Day;
  issuedAt: Date;
  seller: Seller;
  buyer: Buyer;
  lines: InvoiceLineFacts[];
  breakdown: TaxBreakdown[];
  net: number;
  tax: number;
  rounding: number;
  payable: number;
};

/** Reads a row back; throws where it does not fit. */
export function readInvoice(row: Row): InvoiceFacts {
  return {
    id: row.id,
    kind: invoiceKind.parse(row.kind),
    number: row.number,
    jobId: row.jobId,
    correctsId: row.correctsId,
    reason: row.reason,
    currency: row.currency,
    isGross: row.isGross,
    issuedOn: dayFromDate(row.issuedOn),
    suppliedOn: row.suppliedOn && dayFromDate(row.suppliedOn),
    dueOn: dayFromDate(row.dueOn),
    issuedAt: row.issuedAt,
    seller: seller.parse(row.seller),
    buyer: buyer.parse(row.buyer),
    lines: row.lines.map((line) => ({
      ...readLine(line),
      position: line.position,
      net: line.netMinor,
    })),
    breakdown: row.taxes
      .map((part) => ({
        category: taxCategory.parse(part.category),
        rateBps: part.rateBps,
        base: part.baseMinor,
        tax: part.taxMinor,
      }))
      .sort((a, b) => 'SZEO'.indexOf(a.category) - 'SZEO'.indexOf(b.category) || b.rateBps - a.rateBps),
    net: row.netMinor,
    tax: row.taxMinor,
    rounding: row.roundingMinor,
    payable: row.payableMinor,
  };
}
