import { dayFromDate, dayToDate } from '@/lib/calendar/day';
import { isUniqueViolation } from '@/lib/db/errors';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { markOf, requireAsShown, type Shown } from '@/lib/shown-row';
import { LOT_FIELDS } from './part-records';
import type { LotFacts } from './rules/lot-events';
import { writeLotEvent } from './write-lot-event';

/**
 * Puts right what was typed of a lot: its code, who delivered it, when, and what a piece that is still in stock costs. What it said
 * before stays in its history; pieces that were fitted keep their cost, and papers that were issued what they say. A form that changes
 * nothing writes nothing. Refuses a form older than the lot, and a code that another lot of the part has.
 */
export async function correctLot(
  shown: Shown,
  facts: LotFacts,
  by: { userId: string; now: Date },
): Promise<void> {
  const { id: lotId } = shown;
  try {
    await transaction(async (tx) => {
      // Locked before it is compared: of two who have the lot open the second finds what the first left.
      await tx.$queryRaw`SELECT 1 FROM "lot" WHERE "id" = ${lotId} FOR UPDATE`;
      const row = await tx.lot.findUnique({ where: { id: lotId }, select: LOT_FIELDS });
      const found = requireAsShown(shown, LOT_FIELDS, row, 'lot');
      const data = { ...facts, receivedOn: dayToDate(facts.receivedOn) };
      if (markOf(LOT_FIELDS, data) === shown.mark) return;
      await tx.lot.update({ where: { id: lotId }, data, select: { id: true } });
      const before = { ...found, receivedOn: dayFromDate(found.receivedOn) };
      await writeLotEvent(tx, { lotId, ...by, event: { kind: 'corrected', data: { before, after: facts } } });
    });
  } catch (error) {
    if (isUniqueViolation(error, 'lot_partId_code_key')) {
      throw new Refusal('conflict', 'Another lot of this part has this code.', 'code');
    }
    throw error;
  }
}
