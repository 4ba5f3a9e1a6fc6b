import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { isSerialPattern, type SerialRule } from '@/lib/numbers/serial';
import { Refusal } from '@/lib/outcome';
import type { BatteryKind } from '@/lib/parcels/rules/battery';
import { requireAsShown, type Shown } from '@/lib/shown-row';
import { missingSide } from './rules/size';
import { freeSlug, slugOf } from './rules/slug';
import { unitName } from './rules/unit-name';
import { MODEL_FIELDS } from './shown-fields';

export type ModelInput = {
  familyId: string;
  maker: string;
  name: string;
  aliases: string[];
  /** Regular expression a folded serial usually fits. */
  serialPattern: string | null;
  serialRule: SerialRule;
  serialExample: string;
  serialPlace: string;
  battery: BatteryKind;
  batteryWh: number | null;
  isMainsPowered: boolean;
  weightGrams: number;
  /** Outer size; all three, or 0 for each where it is not known. */
  lengthMm: number;
  widthMm: number;
  heightMm: number;
  /** For customs notes, digits only; empty where unknown. */
  tariffNumber: string;
  accessories: string[];
  isListed: boolean;
};

/**
 * Adds a model, or changes the one that was shown; its address is made once and stays, since customers keep links. Returns its id.
 * Refuses a form older than the model, a family that is gone, a serial pattern that cannot be read, a lithium battery without its watt-hours, and half a size.
 */
export async function saveModel(shown: Shown | null, input: ModelInput): Promise<string> {
  refuseInput(input);
  const data = { ...input, batteryWh: input.battery === 'lithium-ion' ? input.batteryWh : null };
  try {
    return await transaction(async (tx) => {
      await refuseFamily(tx, input.familyId);
      if (shown !== null) return change(tx, shown, data);
      const taken = new Set((await tx.model.findMany({ select: { slug: true } })).map((row) => row.slug));
      const slug = freeSlug(slugOf(unitName(input)), taken);
      return (await tx.model.create({ data: { ...data, slug }, select: { id: true } })).id;
    });
  } catch (error) {
    if (isUniqueViolation(error))
      throw new Refusal('conflict', 'A model of this name was just added.', 'name');
    throw error;
  }
}

// Two owners may have the same model open: the row is locked before it is compared with what each was shown, so the second
// finds what the first left and is told.
async function change(tx: Tx, shown: Shown, data: ModelInput): Promise<string> {
  const { id } = shown;
  await tx.$queryRaw`SELECT 1 FROM "model" WHERE "id" = ${id} FOR UPDATE`;
  const before = await tx.model.findUnique({ where: { id }, select: MODEL_FIELDS });
  requireAsShown(shown, MODEL_FIELDS, before, 'model');
  await tx.model.update({ where: { id }, data });
  return id;
}

function refuseInput({ battery, batteryWh, serialPattern, ...size }: ModelInput): void {
  const side = missingSide(size);
  if (side !== null) throw new Refusal('invalid', 'Give all three sides, or 0 for each.', side);
  if (battery === 'lithium-ion' && batteryWh === null) {
    throw new Refusal('invalid', 'Give the watt-hours; without them nobody may post it.', 'batteryWh');
  }
  if (serialPattern !== null && !isSerialPattern(serialPattern)) {
    throw new Refusal(
      'invalid',
      'This pattern cannot be used. Write letters, \\d{4} for four digits, and little else.',
      'serialPattern',
    );
  }
}

async function refuseFamily(tx: Tx, id: string): Promise<void> {
  if ((await tx.family.count({ where: { id } })) > 0) return;
  throw new Refusal('invalid', 'Choose a family from the list.', 'familyId');
}
