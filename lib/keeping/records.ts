import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';
import { customerSought, requestSought } from '@/lib/jobs/stored-sought';
import { readNumber } from '@/lib/numbers/job-number';
import { pageOf } from '@/lib/numbers/page-of';
import { emailKey } from '@/lib/quotes/rules/request-answers';

export const PEOPLE_PER_PAGE = 25;

/** Somebody who wrote under one address. `number` is of their newest job or quote, and leads to their page. */
export type ListedPerson = {
  number: string;
  name: string;
  email: string;
  jobs: number;
  quotes: number;
  lastAt: Date;
};

/**
 * People whose name, e-mail, telephone, postcode or town a text is a part of, with all they booked and asked for, the newest first;
 * pages count from 1, and what is past the last is the last.
 */
export async function findPeople(o: {
  q: string;
  page: number;
}): Promise<{ people: ListedPerson[]; total: number; page: number }> {
  const isMeant = (key: Prisma.Sql) =>
    o.q.trim() === ''
      ? Prisma.sql`true`
      : Prisma.sql`${key} in (
    select lower(btrim(c."email")) from "customer" c where c."erasedAt" is null and ${customerSought(o.q)}
    union select r."emailKey" from "quote_request" r where ${requestSought(o.q, 'person')})`;
  const rows = await db.$queryRaw<(ListedPerson & { total: number })[]>`
    with entry as (
      select lower(btrim(c."email")) as key, c."name", j."number" as job, null as quote, j."bookedAt" as at
      from "customer" c join "job" j on j."customerId" = c."id"
      where c."erasedAt" is null and ${isMeant(Prisma.sql`lower(btrim(c."email"))`)}
      union all
      select r."emailKey", r."name", null, q."number", r."askedAt"
      from "quote_request" r join "quote" q on q."id" = r."quoteId"
      where r."emailKey" <> '' and ${isMeant(Prisma.sql`r."emailKey"`)}
    ),
    person as (
      select (array_agg(coalesce(job, quote) order by at desc))[1] as "number",
        (array_agg("name" order by at desc))[1] as "name",
        key as "email", count(job)::int as "jobs", count(quote)::int as "quotes", max(at) as "lastAt"
      from entry
      group by key
    )
    select person.*, (select count(*) from person)::int as "total"
    from person order by "lastAt" desc, "email"
    limit ${PEOPLE_PER_PAGE} offset (
      select greatest(0, least(${o.page}::int, (count(*) - 1) / ${PEOPLE_PER_PAGE}::int + 1) - 1) * ${PEOPLE_PER_PAGE}::int
      from person)`;
  const total = rows[0]?.total ?? 0;
  const { page } = pageOf(total, { page: o.page, size: PEOPLE_PER_PAGE });
  return { people: rows.map(({ total: _, ...person }) => person), total, page };
}

/** A person as the rows that are theirs; `email` is empty once their data was removed. */
export type Person = { email: string; customerIds: string[]; quoteIds: string[] };

/**
 * The person behind a job's or quote's number, with every booking and request under the same address. Of somebody whose
 * data was removed only the one booking or request is left to find.
 */
export async function findPerson(number: string, client: Tx = db): Promise<Person | null> {
  const reading = readNumber(number);
  if (!reading.ok) return null;
  const found = await behind(reading.number, client);
  if (!found) return null;
  const email = emailKey(found.email);
  if (email === '') {
    return {
      email: '',
      customerIds: found.customerId ? [found.customerId] : [],
      quoteIds: found.quoteId ? [found.quoteId] : [],
    };
  }
  return { email, ...(await rowsOf(email, client)) };
}

async function behind(
  number: string,
  client: Tx,
): Promise<{ email: string; customerId?: string; quoteId?: string } | null> {
  const job = await client.job.findUnique({
    where: { number },
    select: { customer: { select: { id: true, email: true } } },
  });
  if (job) return { email: job.customer.email, customerId: job.customer.id };
  const quote = await client.quote.findUnique({
    where: { number },
    select: {
      id: true,
      request: { select: { email: true } },
      job: { select: { customer: { select: { id: true, email: true } } } },
    },
  });
  if (quote?.request) return { email: quote.request.email, quoteId: quote.id };
  return quote?.job ? { email: quote.job.customer.email, customerId: quote.job.customer.id } : null;
}

/** Ids of the bookings' and requests' rows under an address. Compared here: Prisma would take a `_` in it for any letter. */
async function rowsOf(email: string, client: Tx): Promise<{ customerIds: string[]; quoteIds: string[] }> {
  const customers = await client.$queryRaw<{ id: string }[]>`
    select "id" from "customer" where lower(btrim("email")) = ${email} order by "createdAt"`;
  const quotes = await client.quoteRequest.findMany({
    where: { emailKey: email },
    select: { quoteId: true },
    orderBy: { askedAt: 'asc' },
  });
  return { customerIds: customers.map(({ id }) => id), quoteIds: quotes.map(({ quoteId }) => quoteId) };
}
