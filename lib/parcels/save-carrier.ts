import { isUniqueViolation } from '@/lib/db/errors';
import { sameButForCapitals } from '@/lib/db/like';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { type CarrierKind, isTrackingTemplate } from './rules/carriers';

export type CarrierInput = {
  name: string;
  kind: CarrierKind;
  divisor: number;
  wholeSides: boolean;
  stepGrams: number;
  maxGrams: number;
  longestSideMm: number;
  maxValueMinor: number;
  /** '' for a carrier without a page on parcels */
  tracking: string;
  position: number;
  isUsed: boolean;
};

/**
 * Adds a carrier, or changes the one of an id. Jobs keep the carrier's name as it was written, so that nothing that was
 * sent changes. Refuses a second carrier of a name, in any case, and an address that is no https page with {reference}.
 */
export async function saveCarrier(id: string | null, input: CarrierInput): Promise<void> {
  if (input.tracking !== '' && !isTrackingTemplate(input.tracking)) {
    throw new Refusal(
      'invalid',
      'Enter an https address with {reference} in it once, after the name of the host.',
      'tracking',
    );
  }
  const taken = new Refusal('conflict', 'There is a carrier of this name already.', 'name');
  try {
    await transaction(async (tx) => {
      const same = await tx.carrier.count({
        where: { name: sameButForCapitals(input.name), ...(id !== null && { id: { not: id } }) },
      });
      if (same > 0) throw taken;
      if (id === null) {
        await tx.carrier.create({ data: input });
        return;
      }
      const { count } = await tx.carrier.updateMany({ where: { id }, data: input });
      if (count === 0) throw new Refusal('not-found', 'This carrier is no longer on the list.');
    });
  } catch (error) {
    if (isUniqueViolation(error)) throw taken;
    throw error;
  }
}
