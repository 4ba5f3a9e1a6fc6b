import { stringify } from 'csv-stringify/sync';
import { addDays, day, dayFromDate, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { inOrder } from '@/lib/db/in-order';
import { JOURNAL_HEAD, journalRows } from './rules/journal';
import { readInvoice, WHOLE_INVOICE } from './stored-invoice';

/** True for a month as the journal's address has it: '2026-11'. */
export function isMonth(text: string): boolean {
  return /^(1|2)\d{3}-(0[1-9]|1[0-2])$/.test(text);
}

/** The journal of a month as CSV (RFC 4180, UTF-8 with its mark, so that spreadsheets read names right). */
export async function journalOf(month: string): Promise<string> {
  const within = { gte: dayToDate(day(`${month}-01`)), lt: dayToDate(firstOfNext(month)) };
  const [papers, payments] = await Promise.all([
    db.invoice.findMany({
      where: { issuedOn: within },
      include: {
        ...WHOLE_INVOICE,
        corrects: { select: { number: true } },
        job: { select: { number: true } },
      },
    }),
    db.payment.findMany({
      where: { receivedOn: within },
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

function firstOfNext(month: string) {
  const late = addDays(day(`${month}-01`), 31);
  return day(`${late.slice(0, 7)}-01`);
}
