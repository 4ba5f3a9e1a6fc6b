import { type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { plainInPattern } from '@/lib/db/like';
import { soughtFrom } from '@/lib/jobs/rules/sought';
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
 * the newest first. `q` is looked for in number, serial, device, name and e-mail. Pages count from 1.
 */
export async function listQuotes(o: {
  group: RequestGroup | null;
  q: string;
  page: number;
}): Promise<QuotePage> {
  const found = whereText(o.q);
  const [states, { timeZone }] = await Promise.all([
    db.quoteRequest.groupBy({ by: ['state'], where: found, _count: { _all: true } }),
    readWorkshop(),
  ]);
  const counts = new Map<RequestGroup, number>();
  for (const { state, _count } of states) {
    const group = groupOf(readRequestState(state));
    counts.set(group, (counts.get(group) ?? 0) + _count._all);
  }
  const shown = REQUEST_GROUPS.filter(({ key }) => o.group === null || key === o.group);
  const sizes = shown.map(({ key }) => [key, counts.get(key) ?? 0] as const);
  const total = sizes.reduce((sum, [, count]) => sum + count, 0);
  const { page } = pageOf(total, { page: o.page, size: QUOTES_PER_PAGE });
  const parts = await Promise.all(
    stretchesOf(sizes, { page, size: QUOTES_PER_PAGE }).map(({ group, skip, take }) => {
      const states = REQUEST_GROUPS.find(({ key }) => key === group)?.states ?? [];
      const direction = group === 'ended' ? 'desc' : 'asc';
      return db.quoteRequest.findMany({
        where: { AND: [found, { state: { in: [...states] } }] },
        orderBy: [{ askedAt: direction }, { quoteId: direction }],
        skip,
        take,
        select: LISTED,
      });
    }),
  );
  return {
    quotes: parts.flat().map((row) => listed(row, timeZone)),
    total,
    page,
    counts,
  };
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

function whereText(q: string): Prisma.QuoteRequestWhereInput {
  const sought = soughtFrom(q);
  if (sought.kind === 'nothing') return {};
  if (sought.kind === 'number' && sought.of === 'Q') return { quote: { number: sought.number } };
  if (sought.kind === 'number' && sought.of === 'J') return { quote: { job: { number: sought.number } } };
  const insensitive = { contains: plainInPattern(q.trim()), mode: 'insensitive' } as const;
  const key = sought.kind === 'text' ? sought.key : '';
  return {
    OR: [
      { device: insensitive },
      { name: insensitive },
      { email: insensitive },
      ...(key === ''
        ? []
        : [{ serialKey: { contains: key } }, { quote: { number: { contains: asNumber(key) } } }]),
    ],
  };
}

// Our numbers hold no O, I or L (lib/numbers/job-number.ts).
function asNumber(key: string): string {
  return key.replaceAll('O', '0').replace(/[IL]/g, '1');
}
