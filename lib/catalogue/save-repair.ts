import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import type { TaxCategory } from '@/lib/money/tax';
import { Refusal } from '@/lib/outcome';
import { requireAsShown, type Shown } from '@/lib/shown-row';
import { readHeldWorkshop } from '@/lib/workshop/records';
import { FIRST_CHECK } from './rules/first-check';
import { priceKind } from './rules/price';
import { isSamePrice } from './rules/same';
import { freeSlug, slugOf } from './rules/slug';
import { taxRateProblem } from './rules/tax-of-repair';
import { REPAIR_FIELDS } from './shown-fields';
import { type ChangedBy, writeRepairPrices } from './write-repair-prices';

export type RepairInput = {
  modelId: string;
  policyId: string;
  name: string;
  summary: string;
  priceMinor: number;
  taxCategory: TaxCategory;
  taxRateBps: number;
  minutes: number;
  workingDays: number;
  symptoms: string[];
  isListed: boolean;
};

/**
 * Adds a repair with the first version of its check sheet, or changes the one that was shown. Jobs already booked keep
 * the price they agreed to; a price or tax that changes is kept in the history. A repair stays with its model. Returns its id.
 * Refuses a form older than the repair, one that asked for a price of another kind (rules/price.ts) than the workshop keeps by now,
 * a model or policy that is gone, and a tax and rate that do not go together.
 */
export async function saveRepair(
  shown: Shown | null,
  { priceKind: asked, ...input }: RepairInput & { priceKind: string },
  by: ChangedBy,
): Promise<string> {
  const problem = taxRateProblem(input.taxCategory, input.taxRateBps);
  if (problem) throw new Refusal('invalid', problem, 'taxRate');
  try {
    return await transaction(async (tx) => {
      await refuseOtherKind(tx, asked);
      await refuseMissing(tx, input);
      return shown === null ? create(tx, input, by) : change(tx, shown, input, by);
    });
  } catch (error) {
    if (isUniqueViolation(error))
      throw new Refusal('conflict', 'A repair of this name was just added.', 'name');
    throw error;
  }
}

async function create(tx: Tx, input: RepairInput, by: ChangedBy): Promise<string> {
  const rows = await tx.repair.findMany({ where: { modelId: input.modelId }, select: { slug: true } });
  const slug = freeSlug(slugOf(input.name), new Set(rows.map((row) => row.slug)));
  const sheet = { version: 1, createdAt: by.now, checks: { create: [{ ...FIRST_CHECK, position: 1 }] } };
  const repair = await tx.repair.create({
    data: { ...input, slug, sheets: { create: sheet } },
    select: { id: true },
  });
  await writeRepairPrices(tx, [repair.id], by);
  return repair.id;
}

async function change(
  tx: Tx,
  shown: Shown,
  { modelId, ...data }: RepairInput,
  by: ChangedBy,
): Promise<string> {
  const { id } = shown;
  // Locked first: of two owners who change the repair at once, the second finds what the first left and is told.
  await tx.$queryRaw`SELECT 1 FROM "repair" WHERE "id" = ${id} FOR UPDATE`;
  const row = await tx.repair.findUnique({ where: { id, modelId }, select: REPAIR_FIELDS });
  const before = requireAsShown(shown, REPAIR_FIELDS, row, 'repair');
  await tx.repair.update({ where: { id }, data });
  if (!isSamePrice(before, data)) await writeRepairPrices(tx, [id], by);
  return id;
}

// Held until the price is kept, so that nobody changes meanwhile what its figure means.
async function refuseOtherKind(tx: Tx, asked: string): Promise<void> {
  const kind = priceKind(await readHeldWorkshop(tx));
  if (kind === asked) return;
  throw new Refusal(
    'conflict',
    `Prices in the catalogue are ${kind} since you opened this page. Nothing of yours was saved: load the page again and look at the price.`,
  );
}

async function refuseMissing(tx: Tx, { modelId, policyId }: RepairInput): Promise<void> {
  if ((await tx.model.count({ where: { id: modelId } })) === 0) {
    throw new Refusal('not-found', 'This model is no longer in the catalogue.');
  }
  if ((await tx.policyVersion.count({ where: { policyId } })) === 0) {
    throw new Refusal('invalid', 'Choose a policy from the list.', 'policyId');
  }
}
