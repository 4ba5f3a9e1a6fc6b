import { type Day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import { plainInPattern } from '@/lib/db/like';
import { readNumber } from '@/lib/numbers/job-number';
import { pageOf } from '@/lib/numbers/page-of';
import { type InvoiceState, invoiceState } from './rules/state';
import type { InvoiceKind } from './stored-invoice';

export const INVOICES_PER_PAGE = 40;

export type ListedInvoice = {
  number: string;
  kind: InvoiceKind;
  issuedOn: Day;
  dueOn: Day;
  currency: string;
  payable: number;
  customer: string;
  jobNumber: string;
  /** null for a credit note */
  state: InvoiceState | null;
  owed: number;
};

export type InvoicesSought = { text: string; state: InvoiceState | null; page: number };

type Row = {
  number: string;
  kind: string;
  issuedOn: Date;
  dueOn: Date;
  currency: string;
  payable: number;
  customer: string;
  jobNumber: string;
  left: number;
  owed: number;
  total: number;
};

/**
 * One page of invoices and credit notes, newest first, sought by number, job number or name, and by state. What is past the last
 * page is the last; `page` says which it is.
 */
export async function listInvoices(
  o: InvoicesSought,
): Promise<{ rows: ListedInvoice[]; total: number; page: number }> {
  const text = o.text.trim();
  const job = readNumber(text);
  const like = `%${plainInPattern(text)}%`;
  const sought =
    text === ''
      ? Prisma.sql`TRUE`
      : Prisma.sql`(i."number" ILIKE ${like} OR i."buyer"->>'name' ILIKE ${like}
          OR j."number" = ${job.ok ? job.number : text.toUpperCase()})`;
  const rows = await db.$queryRaw<Row[]>`
    WITH listed AS (
      SELECT i."number", i."kind", i."issuedOn", i."dueOn", i."currency", i."payableMinor" AS payable,
        i."buyer"->>'name' AS customer, j."number" AS "jobNumber", i."year", i."sequence",
        (i."payableMinor" - COALESCE((SELECT SUM(c."payableMinor") FROM "invoice" c WHERE c."correctsId" = i."id"), 0))::int
          AS "left",
        (COALESCE((SELECT SUM(CASE a."kind" WHEN 'invoice' THEN a."payableMinor" ELSE -a."payableMinor" END)
            FROM "invoice" a WHERE a."jobId" = i."jobId"), 0)
          - COALESCE((SELECT SUM(p."amountMinor") FROM "payment" p
            WHERE p."jobId" = i."jobId" AND p."purpose" = 'price'), 0))::int AS owed
      FROM "invoice" i JOIN "job" j ON j."id" = i."jobId"
      WHERE ${sought}
    ),
    found AS (SELECT * FROM listed WHERE ${ofState(o.state)})
    SELECT *, (SELECT COUNT(*) FROM found)::int AS total FROM found
    ORDER BY "issuedOn" DESC, "year" DESC, "sequence" DESC
    LIMIT ${INVOICES_PER_PAGE} OFFSET (
      SELECT GREATEST(0, LEAST(${o.page}::int, (COUNT(*) - 1) / ${INVOICES_PER_PAGE}::int + 1) - 1) * ${INVOICES_PER_PAGE}::int
      FROM found)`;
  const total = rows[0]?.total ?? 0;
  const { page } = pageOf(total, { page: o.page, size: INVOICES_PER_PAGE });
  return { rows: rows.map(listed), total, page };
}

function ofState(state: InvoiceState | null): Prisma.Sql {
  switch (state) {
    case null:
      return Prisma.sql`TRUE`;
    case 'open':
      return Prisma.sql`"kind" = 'invoice' AND "left" > 0 AND owed > 0`;
    case 'paid':
      return Prisma.sql`"kind" = 'invoice' AND "left" > 0 AND owed <= 0`;
    case 'credited':
      return Prisma.sql`"kind" = 'invoice' AND "left" <= 0`;
  }
}

function listed(row: Row): ListedInvoice {
  const isInvoice = row.kind === 'invoice';
  return {
    number: row.number,
    kind: isInvoice ? 'invoice' : 'credit-note',
    issuedOn: dayFromDate(row.issuedOn),
    dueOn: dayFromDate(row.dueOn),
    currency: row.currency,
    payable: row.payable,
    customer: row.customer,
    jobNumber: row.jobNumber,
    state: isInvoice ? invoiceState({ leftToCredit: row.left, owed: row.owed }) : null,
    owed: row.owed,
  };
}
