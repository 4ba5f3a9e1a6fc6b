import type { Tx } from '@/lib/db/transaction';
import { LOT_EVENT_DATA, type LotEventData } from './rules/lot-events';

/** Adds a line to a lot's history, inside the caller's transaction. */
export async function writeLotEvent(
  tx: Tx,
  o: { lotId: string; userId: string; now: Date; event: LotEventData },
): Promise<void> {
  await tx.lotEvent.create({
    data: {
      lotId: o.lotId,
      kind: o.event.kind,
      data: LOT_EVENT_DATA[o.event.kind].parse(o.event.data),
      at: o.now,
      userId: o.userId,
    },
    select: { id: true },
  });
}
