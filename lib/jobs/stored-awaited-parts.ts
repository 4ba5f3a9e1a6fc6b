import { inOrderOfDay } from '@/lib/bench/rules/on-order';
import { LOT_STOCK, piecesInStock } from '@/lib/bench/stored-stock';
import { dayFromDate } from '@/lib/calendar/day';
import type { Prisma } from '@/lib/db/generated/client';
import type { AwaitedPart } from './rules/awaited-parts';

/** What must be read of a job to say for which parts it waits, and until when. */
export const AWAITED_PARTS = {
  orderBy: { id: 'asc' },
  select: {
    partId: true,
    name: true,
    quantity: true,
    expectedOn: true,
    part: {
      select: {
        lots: { select: LOT_STOCK },
        orders: { where: { endedAt: null }, select: { expectedOn: true } },
      },
    },
  },
} satisfies Prisma.Job$awaitedPartsArgs;

type Stored = Prisma.JobGetPayload<{ select: { stage: true; awaitedParts: typeof AWAITED_PARTS } }>;

/** The parts that a job waits for; none unless it awaits parts now, and where nobody has said which. */
export function awaitedPartsOf({ stage, awaitedParts }: Stored): AwaitedPart[] {
  if (stage !== 'awaiting-parts') return [];
  return awaitedParts.map(({ part, expectedOn, ...row }) => {
    const orders = part?.orders.map((order) => ({
      expectedOn: order.expectedOn && dayFromDate(order.expectedOn),
    }));
    const [next] = inOrderOfDay(orders ?? []);
    return {
      ...row,
      inStock: piecesInStock(part?.lots ?? []),
      isOnOrder: next !== undefined,
      expectedOn: next?.expectedOn ?? (expectedOn && dayFromDate(expectedOn)),
    };
  });
}
