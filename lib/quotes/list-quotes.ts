import { type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import { soughtFrom } from '@/lib/jobs/rules/sought';
import { ourNumber, requestSought } from '@/lib/jobs/stored-sought';
import { pageOf } from '@/lib/numbers/page-of';
import { readWorkshop } from '@/lib/workshop/records';
import { groupOf, REQUEST_GROUPS, type RequestGroup, stretchesOf } from './rules/request-groups';
import { type RequestState, readRequestState } from './rules/request-states';

export const QUOTES_PER_PAGE = 25;

export type ListedQuote = {
  number: string;
  state: RequestState;
  device: string;
  problem: string;
  serial: string;
  customer: string;
  askedOn: Day;
  photos: number;
  /** the newest price, with tax, minor units */
  gross: number | null;
  currency: string;
  heldUntil: Day | null;
  job: string | null;
};

export type QuotePage = {
  quotes: ListedQuote[];
  total: number;
  /** the one that is shown: what is past the last page is the last */
  page: number;
  /** how many of those the search finds are in each group, whatever group is chosen */
  counts: ReadonlyMap<RequestGroup, number>;
};

const LISTED = {
  state: true,
  device: true,
  problem: true,
  serialTyped: true,
  name: true,
  askedAt: true,
  quote: {
    select: {
      number: true,
      currency: true,
      job: { select: { number: true } },
      _count: { select: { photos: true } },
      revisions: {
        orderBy: { revision: 'desc' },
        take: 1,
        select: { grossMinor: true, validUntil: true },
      },
    },
  },
} satisfies Prisma.QuoteRequestSelect;

type Row = Prisma.QuoteRequestGetPayload<{ select: typeof LISTED }>;

/**
 * One page of the quotes that were asked for: those that wait on us first, the oldest first, and those that ended last,
 * the newest first. `q` is looked for in number, serial, device, name, e-mail and telephone. Pages count from 1.
 */
export async function listQuotes(o: {
  group: RequestGroup | null;
  q: string;
  page: number;
}): Promise<QuotePage> {
  const found = requestsSought(o.q);
  const [states, { timeZone }] = await Promise.all([
    db.$queryRaw<{ state: string; count: number }[]>`
      SELECT r."state", count(*)::int AS count FROM "quote_request" r WHERE ${found} GROUP BY r."state"`,
    readWorkshop(),
  ]);
  const counts = new Map<RequestGroup, number>();
  for (const { state, count } of states) {
    const group = groupOf(readRequestState(state));
    counts.set(group, (counts.get(group) ?? 0) + count);
  }
  const shown = REQUEST_GROUPS.filter(({ key }) => o.group === null || key === o.group);
  const sizes = shown.map(({ key }) => [key, counts.get(key) ?? 0] as const);
  const total = sizes.reduce((sum, [, count]) => sum + count, 0);
  const { page } = pageOf(total, { page: o.page, size: QUOTES_PER_PAGE });
  const parts = await Promise.all(
    stretchesOf(sizes, { page, size: QUOTES_PER_PAGE }).map(({ group, skip, take }) => {
      const states = REQUEST_GROUPS.find(({ key }) => key === group)?.states ?? [];
      const direction = group === 'ended' ? Prisma.sql`DESC` : Prisma.sql`ASC`;
      return db.$queryRaw<{ quoteId: string }[]>`
        SELECT r."quoteId" FROM "quote_request" r WHERE ${found} AND r."state" IN (${Prisma.join([...states])})
        ORDER BY r."askedAt" ${direction}, r."quoteId" ${direction} LIMIT ${take} OFFSET ${skip}`;
    }),
  );
  const ids = parts.flat().map(({ quoteId }) => quoteId);
  const rows = await db.quoteRequest.findMany({
    where: { quoteId: { in: ids } },
    select: { quoteId: true, ...LISTED },
  });
  return {
    quotes: inOrderOf(ids, rows).map((row) => listed(row, timeZone)),
    total,
    page,
    counts,
  };
}

function inOrderOf<T extends { quoteId: string }>(ids: readonly string[], rows: readonly T[]): T[] {
  const byId = new Map(rows.map((row) => [row.quoteId, row]));
  return ids.flatMap((id) => byId.get(id) ?? []);
}

function listed(row: Row, timeZone: string): ListedQuote {
  const { quote } = row;
  const newest = quote.revisions[0];
  return {
    number: quote.number,
    state: readRequestState(row.state),
    device: row.device,
    problem: row.problem,
    serial: row.serialTyped,
    customer: row.name,
    askedOn: dayInZone(row.askedAt, timeZone),
    photos: quote._count.photos,
    gross: newest?.grossMinor ?? null,
    currency: quote.currency,
    heldUntil: newest ? dayFromDate(newest.validUntil) : null,
    job: quote.job?.number ?? null,
  };
}

/** The condition on `"quote_request" r`; each place is asked for by itself, since one condition over both would use no index. */
function requestsSought(q: string): Prisma.Sql {
  const sought = soughtFrom(q);
  if (sought.kind === 'nothing') return Prisma.sql`TRUE`;
  const places = [];
  if (sought.kind === 'number' && sought.of === 'Q') places.push(ofNumber(Prisma.sql`= ${sought.number}`));
  else if (sought.kind === 'number' && sought.of === 'J')
    places.push(Prisma.sql`
      SELECT q."id" FROM "quote" q JOIN "job" j ON j."id" = q."jobId" WHERE j."number" = ${sought.number}`);
  else {
    places.push(Prisma.sql`SELECT r."quoteId" FROM "quote_request" r WHERE ${requestSought(q, 'all')}`);
    if (sought.kind === 'text' && sought.key !== '')
      places.push(ofNumber(Prisma.sql`LIKE ${`%${ourNumber(sought.key)}%`}`));
  }
  return Prisma.sql`r."quoteId" IN (${Prisma.join(places, ' UNION ')})`;
}

function ofNumber(condition: Prisma.Sql): Prisma.Sql {
  return Prisma.sql`SELECT q."id" FROM "quote" q WHERE q."number" ${condition}`;
}
