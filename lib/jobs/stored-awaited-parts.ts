import { LOT_STOCK, piecesInStock } from '@/lib/bench/stored-stock';
import { dayFromDate } from '@/lib/calendar/day';
import type { Prisma } from '@/lib/db/generated/client';
import type { AwaitedPart } from './rules/awaited-parts';
import { openPieces, piecesFor } from './rules/pieces-for';
import { PIECES_KEPT } from './rules/stage-sets';

/** What of a job says how many of the pieces it waits for it has taken, since when it waits, and which of them it does not need. */
export const TAKEN = {
  partUses: { select: { quantity: true, at: true, lot: { select: { partId: true } } } },
  events: { where: { kind: 'parts-awaited' }, orderBy: { version: 'desc' }, take: 1, select: { at: true } },
  partsNotNeeded: { select: { partId: true } },
} satisfies Prisma.JobSelect;

/** What must be read of a job to say for which parts it waits, and until when: who else waits for them goes into it. */
export const AWAITED_PARTS = {
  orderBy: { id: 'asc' },
  select: {
    id: true,
    partId: true,
    name: true,
    quantity: true,
    expectedOn: true,
    part: {
      select: {
        lots: { select: LOT_STOCK },
        orders: { where: { endedAt: null }, select: { quantity: true, came: true, expectedOn: true } },
        awaited: {
          where: { job: { stage: { in: [...PIECES_KEPT] } } },
          select: {
            id: true,
            partId: true,
            quantity: true,
            job: { select: { stage: true, promisedOn: true, ...TAKEN } },
          },
        },
      },
    },
  },
} satisfies Prisma.Job$awaitedPartsArgs;

type Stored = Prisma.JobGetPayload<{ select: { stage: true; awaitedParts: typeof AWAITED_PARTS } }>;
type StoredPart = NonNullable<Stored['awaitedParts'][number]['part']>;

/** The parts that a job waits for; none unless it awaits parts now, and where nobody has said which. */
export function awaitedPartsOf({ stage, awaitedParts }: Stored): AwaitedPart[] {
  if (stage !== 'awaiting-parts') return [];
  return awaitedParts.map(({ id, partId, name, quantity, part, expectedOn }) => {
    const typed = expectedOn && dayFromDate(expectedOn);
    if (!part)
      return { partId, name, quantity, here: 0, isOnOrder: false, isNeeded: true, expectedOn: typed };
    const { open, here, isOnOrder, comesOn } = piecesFor(id, supplyOf(part));
    const isNeeded = part.awaited.every((each) => each.id !== id || needs(each));
    return { partId, name, quantity: open, here, isOnOrder, isNeeded, expectedOn: comesOn ?? typed };
  });
}

function supplyOf({ lots, orders, awaited }: StoredPart): Parameters<typeof piecesFor>[1] {
  return {
    inStock: piecesInStock(lots),
    orders: orders.map((order) => ({
      ...order,
      expectedOn: order.expectedOn && dayFromDate(order.expectedOn),
    })),
    waiting: awaited.map((each) => ({
      id: each.id,
      isOnBench: each.job.stage === 'on-bench',
      promisedOn: each.job.promisedOn && dayFromDate(each.job.promisedOn),
      open: needs(each) ? openOf(each, each.job) : 0,
    })),
  };
}

function needs({ partId, job }: StoredPart['awaited'][number]): boolean {
  return job.partsNotNeeded.every((said) => said.partId !== partId);
}

type Taking = Prisma.JobGetPayload<{ select: typeof TAKEN }>;

/** Pieces of a part of the list that a job still waits for, whatever was said of the part since. */
export function openOf(
  { partId, quantity }: { partId: string | null; quantity: number },
  { partUses, events }: Pick<Taking, 'partUses' | 'events'>,
): number {
  const uses = partUses.filter(({ lot }) => lot.partId === partId);
  return openPieces(quantity, uses, events[0]?.at ?? null);
}
