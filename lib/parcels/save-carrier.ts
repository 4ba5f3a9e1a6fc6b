import { isUniqueViolation } from '@/lib/db/errors';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { requireAsShown, type Shown } from '@/lib/shown-row';
import { CARRIER_FIELDS } from './records';
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
  /** the longest its parcels usually travel, working days, and to another country */
  daysHome: number;
  daysAbroad: number;
  position: number;
  isUsed: boolean;
};

/**
 * Adds a carrier, or changes the one that was shown. Jobs keep the carrier's name as it was written, so that nothing that was
 * sent changes. Refuses a form older than the carrier, an address that is no https page with {reference}, and a second carrier of a
 * name, in any case: an index decides, so that of two who add it at once one is told.
 */
export async function saveCarrier(shown: Shown | null, input: CarrierInput): Promise<void> {
  if (input.tracking !== '' && !isTrackingTemplate(input.tracking)) {
    throw new Refusal(
      'invalid',
      'Enter an https address with {reference} in it once, after the name of the host.',
      'tracking',
    );
  }
  try {
    await transaction(async (tx) => {
      if (shown === null) {
        await tx.carrier.create({ data: input });
        return;
      }
      const { id } = shown;
      await tx.$queryRaw`SELECT 1 FROM "carrier" WHERE "id" = ${id} FOR UPDATE`;
      const before = await tx.carrier.findUnique({ where: { id }, select: CARRIER_FIELDS });
      requireAsShown(shown, CARRIER_FIELDS, before, 'carrier');
      await tx.carrier.update({ where: { id }, data: input });
    });
  } catch (error) {
    if (isUniqueViolation(error))
      throw new Refusal('conflict', 'There is a carrier of this name already.', 'name');
    throw error;
  }
}
