import { type Day, dayToDate } from '@/lib/calendar/day';
import { isUniqueViolation } from '@/lib/db/errors';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';

export type LotInput = {
  partId: string;
  code: string;
  supplier: string;
  receivedOn: Day;
  received: number;
  unitCostMinor: number;
};

/** Books a delivery in as a new lot, all of it in stock. Returns its id. Refuses a lot code the part has already. */
export async function addLot(input: LotInput): Promise<string> {
  const data = { ...input, receivedOn: dayToDate(input.receivedOn), inStock: input.received };
  try {
    return await transaction(async (tx) => {
      if ((await tx.part.count({ where: { id: input.partId } })) === 0) {
        throw new Refusal('not-found', 'This part is no longer on the list.');
      }
      return (await tx.lot.create({ data, select: { id: true } })).id;
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
