import type { Day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { inOrder } from '@/lib/db/in-order';
import type { Tx } from '@/lib/db/transaction';
import { agreedOf, offerOf } from './rules/agreed';
import { heldNo, noOfRequest } from './rules/held-no';
import { type RequestState, readRequestState } from './rules/request-states';

/** Everything of one quote that was asked for, for the staff's page and, narrowed by its reader, for the customer. */
const WHOLE = {
  id: true,
  number: true,
  currency: true,
  version: true,
  job: { select: { id: true, number: true, stage: true } },
  request: {
    include: {
      model: { include: { repairs: { select: { symptoms: true } } } },
      repair: { include: { model: true } },
    },
  },
  revisions: {
    orderBy: { revision: 'asc' },
    include: { policyVersion: true, lines: { orderBy: { position: 'asc' } } },
  },
  events: { orderBy: { version: 'asc' } },
  photos: { orderBy: inOrder },
  messages: { orderBy: inOrder },
} satisfies Prisma.QuoteSelect;

type Row = Prisma.QuoteGetPayload<{ select: typeof WHOLE }>;
export type QuoteRecord = Omit<Row, 'request'> & {
  request: Omit<NonNullable<Row['request']>, 'state'> & { state: RequestState };
};
export type QuoteRevisionRecord = QuoteRecord['revisions'][number];

/** A quote that was asked for; null for any other, one booked from the price list included. */
export async function readQuote(
  where: { id: string } | { number: string },
  client: Tx = db,
): Promise<QuoteRecord | null> {
  const row = await client.quote.findUnique({ where, select: WHOLE });
  if (!row?.request) return null;
  return { ...row, request: { ...row.request, state: readRequestState(row.request.state) } };
}

/** The revision that waits for an answer, or null. */
export function openRevision(quote: QuoteRecord): QuoteRevisionRecord | null {
  return offerOf({ quotes: [quote] }) ?? null;
}

/** The revision that was agreed to, or null. */
export function agreedRevision(quote: QuoteRecord): QuoteRevisionRecord | null {
  return agreedOf({ quotes: [quote] }) ?? null;
}

/** The price that was declined and to which a yes may still come on that day, or null. */
export function heldNoOf(quote: QuoteRecord, today: Day): QuoteRevisionRecord | null {
  const no = noOfRequest({ state: quote.request.state, events: quote.events });
  return heldNo(quote.revisions, { no, today });
}

/** The quote a job came from, where it was asked for; null for a job booked from the price list. */
export function quoteAskedFor(jobId: string): Promise<{ id: string; number: string } | null> {
  return db.quote.findFirst({
    where: { jobId, request: { isNot: null } },
    select: { id: true, number: true },
  });
}

const LISTED = {
  quoteId: true,
  state: true,
  device: true,
  problem: true,
  name: true,
  askedAt: true,
  quote: {
    select: {
      number: true,
      revisions: {
        orderBy: { revision: 'desc' },
        take: 1,
        select: { grossMinor: true, validUntil: true, state: true },
      },
      events: { orderBy: { version: 'desc' }, take: 1, select: { at: true } },
      _count: { select: { photos: true } },
      job: { select: { number: true } },
    },
  },
} satisfies Prisma.QuoteRequestSelect;

export type ListedRequest = {
  quoteId: string;
  number: string;
  state: RequestState;
  device: string;
  problem: string;
  name: string;
  askedAt: Date;
  /** the last thing that happened to it */
  changedAt: Date;
  photos: number;
  newest: { grossMinor: number; validUntil: Date; state: string } | null;
  jobNumber: string | null;
};

/** Requests in some states, or in all, the oldest first; at most `take`. */
export async function listRequests(
  o: { states?: readonly RequestState[]; take?: number } = {},
  client: Tx = db,
): Promise<ListedRequest[]> {
  const rows = await client.quoteRequest.findMany({
    ...(o.states ? { where: { state: { in: [...o.states] } } } : {}),
    select: LISTED,
    orderBy: [{ askedAt: 'asc' }, { quoteId: 'asc' }],
    ...(o.take === undefined ? {} : { take: o.take }),
  });
  return rows.map(({ quote, state, ...row }) => ({
    ...row,
    number: quote.number,
    state: readRequestState(state),
    changedAt: quote.events[0]?.at ?? row.askedAt,
    photos: quote._count.photos,
    newest: quote.revisions[0] ?? null,
    jobNumber: quote.job?.number ?? null,
  }));
}
