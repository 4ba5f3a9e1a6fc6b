import { stringify } from 'csv-stringify/sync';
import { addDays, day, dayFromDate, dayInZone, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { inOrder } from '@/lib/db/in-order';
import { JOURNAL_HEAD, journalRows } from './rules/journal';
import { readInvoice, WHOLE_INVOICE } from './stored-invoice';

/** True for a month as the journal's address has it: '2026-11'. */
export function isMonth(text: string): boolean {
  return /^(1|2)\d{3}-(0[1-9]|1[0-2])$/.test(text);
}

/** The first day of a month and that of the next, as stored days are compared. */
export function withinMonth(month: string): { gte: Date; lt: Date } {
  return { gte: dayToDate(day(`${month}-01`)), lt: dayToDate(firstOfNext(month)) };
}

export type JournalPart =
  /** everything of the month; `isTaken`: without payments that came in while it was being taken */
  | { part: 'whole'; isTaken?: boolean }
  /** the payments that one taking had first, and no paper: none is issued for a day gone by */
  | { part: 'since'; takingId: string };

/** The journal of a month, or a part of it, as CSV (RFC 4180, UTF-8 with its mark, so that spreadsheets read names right). */
export async function journalOf(
  month: string,
  zone: string,
  asked: JournalPart = { part: 'whole' },
): Promise<string> {
  const within = withinMonth(month);
  const [papers, payments] = await Promise.all([
    db.invoice.findMany({
      where: asked.part === 'whole' ? { issuedOn: within } : { id: { in: [] } },
      include: {
        ...WHOLE_INVOICE,
        corrects: { select: { number: true } },
        job: { select: { number: true } },
      },
    }),
    db.payment.findMany({
      where: { receivedOn: within, ...wherePayment(asked) },
      include: { job: { select: { number: true, customer: { select: { name: true } } } } },
      orderBy: inOrder,
    }),
  ]);
  const rows = journalRows(
    papers.map((row) => {
      const facts = readInvoice(row);
      return {
        kind: facts.kind,
        number: facts.number,
        corrects: row.corrects?.number ?? null,
        on: facts.issuedOn,
        job: row.job.number,
        customer: facts.buyer.name,
        currency: facts.currency,
        breakdown: facts.breakdown,
        rounding: facts.rounding,
      };
    }),
    payments.map((row) => ({
      on: dayFromDate(row.receivedOn),
      enteredOn: dayInZone(row.at, zone),
      job: row.job.number,
      customer: row.job.customer.name,
      currency: row.currency,
      amount: row.amountMinor,
      purpose: row.purpose,
      method: row.method,
      reference: row.reference,
    })),
  );
  return stringify([[...JOURNAL_HEAD], ...rows], { bom: true, record_delimiter: 'windows' });
}

function wherePayment(asked: JournalPart): Prisma.PaymentWhereInput {
  if (asked.part === 'since') return { takingId: asked.takingId };
  return asked.isTaken ? { takingId: { not: null } } : {};
}

function firstOfNext(month: string) {
  const late = addDays(day(`${month}-01`), 31);
  return day(`${late.slice(0, 7)}-01`);
}
