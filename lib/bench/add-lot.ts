import { type Day, dayToDate } from '@/lib/calendar/day';
import { isUniqueViolation } from '@/lib/db/errors';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { writeCame } from './write-came';

export type LotInput = {
  partId: string;
  code: string;
  supplier: string;
  receivedOn: Day;
  received: number;
  unitCostMinor: number;
};

/** The order that pieces which are booked in came of, and who books them in. */
export type CameOf = { orderId: string; userId: string; now: Date };

/**
 * Books a delivery in as a new lot, all of it in stock, and counts it to the order it came of. Returns its id. Refuses a lot code the
 * part has already, and an order that was ended meanwhile.
 */
export async function addLot(input: LotInput, of: CameOf | null = null): Promise<string> {
  const data = { ...input, receivedOn: dayToDate(input.receivedOn), inStock: input.received };
  try {
    return await transaction(async (tx) => {
      if ((await tx.part.count({ where: { id: input.partId } })) === 0) {
        throw new Refusal('not-found', 'This part is no longer on the list.');
      }
      const { id } = await tx.lot.create({ data, select: { id: true } });
      if (of) await writeCame(tx, { ...of, partId: input.partId, pieces: input.received });
      return id;
    });
  } catch (error) {
    if (isUniqueViolation(error, 'lot_partId_code_key')) {
      throw new Refusal(
        'conflict',
        'This part has a lot of that code already. Add the pieces on its page.',
        'code',
      );
    }
    throw error;
  }
}
