import { type Day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { inOrder } from '@/lib/db/in-order';
import type { Tx } from '@/lib/db/transaction';
import { inOrderOfDay, type OpenOrder, type OrderMove } from './rules/on-order';

export type StoredOrder = OpenOrder & {
  id: string;
  part: string;
  supplier: string;
  orderedOn: Day;
  userId: string;
  /** each time another day was said, in order */
  moves: (OrderMove & { id: string; at: Date; userId: string })[];
};

/** Orders of which pieces are still to come, of all parts or of these, by the day they should come. */
export async function readOpenOrders(
  partIds: readonly string[] | null = null,
  client: Tx = db,
): Promise<StoredOrder[]> {
  const rows = await client.partOrder.findMany({
    where: { endedAt: null, ...(partIds && { partId: { in: [...partIds] } }) },
    orderBy: inOrder,
    select: {
      id: true,
      partId: true,
      quantity: true,
      came: true,
      supplier: true,
      orderedOn: true,
      expectedOn: true,
      userId: true,
      part: { select: { name: true } },
      moves: { orderBy: inOrder, select: { id: true, fromDay: true, toDay: true, at: true, userId: true } },
    },
  });
  return inOrderOfDay(
    rows.map(({ part, orderedOn, expectedOn, moves, ...row }) => ({
      ...row,
      part: part.name,
      orderedOn: dayFromDate(orderedOn),
      expectedOn: expectedOn && dayFromDate(expectedOn),
      moves: moves.map(({ fromDay, toDay, ...move }) => ({
        ...move,
        from: fromDay && dayFromDate(fromDay),
        to: toDay && dayFromDate(toDay),
      })),
    })),
  );
}
