import { compareDays, type Day, dayInZone, dayToDate } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { idOfSent, writeOnce } from '@/lib/jobs/write-once';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import type { Pieces } from './rules/order-list';

/**
 * Notes that parts were ordered from one supplier, all in one go, so that the order list asks for them no more. A second press of the
 * same form finds the first one's row and orders nothing. Refuses a day of ordering to come, parts expected before they were
 * ordered, and a part that is no longer on the list.
 */
export async function orderParts(o: {
  pieces: readonly Pieces[];
  supplier: string;
  orderedOn: Day;
  /** null where nobody said when they come */
  expectedOn: Day | null;
  formKey: string;
  userId: string;
  now: Date;
}): Promise<void> {
  const [first, ...rest] = o.pieces;
  if (!first) throw new Refusal('invalid', 'Tick what was ordered.', 'ordered');
  const { supplier, orderedOn, expectedOn } = o;
  await writeOnce('part_order_pkey', () =>
    transaction(async (tx) => {
      const { timeZone } = await readWorkshop(tx);
      if (compareDays(orderedOn, dayInZone(o.now, timeZone)) > 0)
        throw new Refusal('invalid', 'This day is still to come.', 'orderedOn');
      requireAfter(expectedOn, orderedOn);
      const partIds = [...new Set(o.pieces.map(({ partId }) => partId))];
      if ((await tx.part.count({ where: { id: { in: partIds } } })) < partIds.length)
        throw new Refusal('not-found', 'One of these parts is no longer on the list.');
      const row = ({ partId, quantity }: Pieces) => ({
        partId,
        quantity,
        supplier,
        orderedOn: dayToDate(orderedOn),
        expectedOn: expectedOn && dayToDate(expectedOn),
        at: o.now,
        userId: o.userId,
      });
      const { id } = idOfSent(o.formKey, [o.pieces, supplier, orderedOn, expectedOn]);
      // The row with the form's id first: of two presses at once the second waits here and then finds it.
      await tx.partOrder.create({ data: { ...row(first), id }, select: { id: true } });
      await tx.partOrder.createMany({ data: rest.map(row) });
    }),
  );
}

/** Refuses a day on which something should have come before it was ordered. */
export function requireAfter(expectedOn: Day | null, orderedOn: Day): void {
  if (expectedOn !== null && compareDays(expectedOn, orderedOn) < 0)
    throw new Refusal('invalid', 'This is before the day it was ordered.', 'expectedOn');
}
