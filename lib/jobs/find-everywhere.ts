import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import { plainInPattern } from '@/lib/db/like';
import { soughtFrom } from './rules/sought';
import { jobsSought, requestSought } from './stored-sought';

/** What is looked through beside each other, in the order in which it is shown. */
export const FOUND_PLACES = ['job', 'quote', 'lot', 'invoice'] as const;
export type FoundPlaceKey = (typeof FOUND_PLACES)[number];

export type FoundRow = {
  place: FoundPlaceKey;
  /** what its page is reached by: a number, or the id of a lot */
  key: string;
  /** what it is called by */
  name: string;
  /** a unit and its repair, a device, a part, or the number of an invoice's job */
  what: string;
  /** a customer, or a lot's supplier */
  whose: string;
  /** the stage of a job, the state of a quote; empty elsewhere */
  state: string;
  /** booked, asked, issued; of a lot midnight UTC of the day it was received */
  at: Date;
  /** how many there are at this place, shown or not */
  total: number;
};

/** How many of each are shown before the list of all. */
export const SHOWN_OF_EACH = 5;

/**
 * The newest few of everything that a text leads to, in one statement. Quotes and invoices of a job that is found
 * itself are left out: the job's sheet leads on to both. Invoices are looked for where `withInvoices` is told.
 */
export async function findEverywhere(o: { q: string; withInvoices: boolean }): Promise<FoundRow[]> {
  const sought = soughtFrom(o.q);
  if (sought.kind === 'nothing') return [];
  const key = sought.kind === 'text' ? sought.key : '';
  const places = [
    JOBS,
    QUOTES,
    ...(key === '' ? [] : [lots(key)]),
    ...(o.withInvoices ? [invoices(o.q.trim())] : []),
  ];
  const rows = await db.$queryRaw<FoundRow[]>`
    WITH jobs AS MATERIALIZED (
      SELECT "id", "bookedAt" FROM "job" WHERE "id" IN (${jobsSought(o.q)})
    ),
    quotes AS MATERIALIZED (
      SELECT r."quoteId", r."askedAt" FROM "quote_request" r WHERE ${requestSought(o.q, 'all')}
        AND NOT EXISTS (SELECT 1 FROM "quote" q JOIN jobs ON jobs."id" = q."jobId" WHERE q."id" = r."quoteId")
    )
    ${Prisma.join(
      places.map((place) => Prisma.sql`(${place})`),
      ' UNION ALL ',
    )}`;
  return rows.toSorted((a, b) => b.at.getTime() - a.at.getTime());
}

const JOBS = Prisma.sql`
  SELECT 'job' AS "place", j."number" AS "key", j."number" AS "name", m."maker" || ' ' || m."name" || ': ' || p."name" AS "what",
    c."name" AS "whose", j."stage" AS "state", j."bookedAt" AS "at", (SELECT count(*) FROM jobs)::int AS "total"
  FROM (SELECT "id" FROM jobs ORDER BY "bookedAt" DESC, "id" DESC LIMIT ${SHOWN_OF_EACH}) newest
  JOIN "job" j ON j."id" = newest."id" JOIN "customer" c ON c."id" = j."customerId"
  JOIN "model" m ON m."id" = j."modelId" JOIN "repair" p ON p."id" = j."repairId"`;

const QUOTES = Prisma.sql`
  SELECT 'quote', q."number", q."number", r."device", r."name", r."state", r."askedAt", (SELECT count(*) FROM quotes)::int
  FROM (SELECT "quoteId" FROM quotes ORDER BY "askedAt" DESC, "quoteId" DESC LIMIT ${SHOWN_OF_EACH}) newest
  JOIN "quote_request" r ON r."quoteId" = newest."quoteId" JOIN "quote" q ON q."id" = r."quoteId"`;

const lots = (key: string) => Prisma.sql`
  SELECT 'lot', l."id", l."code", p."name", l."supplier", '', l."receivedOn"::timestamp AT TIME ZONE 'UTC', (count(*) OVER ())::int
  FROM "lot" l JOIN "part" p ON p."id" = l."partId"
  WHERE upper(regexp_replace(l."code", '[^A-Za-z0-9]', '', 'g')) LIKE ${`%${key}%`}
  ORDER BY l."receivedOn" DESC, l."id" DESC LIMIT ${SHOWN_OF_EACH}`;

const invoices = (text: string) => Prisma.sql`
  SELECT 'invoice', i."number", i."number", j."number", i."buyer"->>'name', '', i."issuedAt", (count(*) OVER ())::int
  FROM "invoice" i JOIN "job" j ON j."id" = i."jobId"
  WHERE lower(i."buyer"->>'name') LIKE lower(${`%${plainInPattern(text)}%`}) AND i."jobId" NOT IN (SELECT "id" FROM jobs)
  ORDER BY i."issuedAt" DESC, i."id" DESC LIMIT ${SHOWN_OF_EACH}`;
