import type { Tx } from '@/lib/db/transaction';
import { FIRST_CHECK } from './rules/first-check';
import type { ImportPlan } from './rules/plan-import';
import { type ChangedBy, writeRepairPrices } from './write-repair-prices';

type Change<K extends 'families' | 'models' | 'repairs'> = ImportPlan[K][number];

/**
 * Writes what a plan without problems says, inside the caller's transaction. Rows are written by the thousand, not one by one:
 * new ones with createMany, changed ones with one UPDATE from a list of records.
 */
export async function writeImport(tx: Tx, plan: ImportPlan, by: ChangedBy): Promise<void> {
  await writeFamilies(tx, plan.families);
  await writeModels(tx, plan.models);
  await writeRepairs(tx, plan.repairs, by);
}

const isNew = (change: { id: string | null }) => change.id === null;
const known = <C extends { id: string | null }>(changes: readonly C[]) =>
  changes.flatMap((change) => (change.id === null ? [] : [{ ...change, id: change.id }]));

async function writeFamilies(tx: Tx, changes: readonly Change<'families'>[]): Promise<void> {
  await tx.family.createMany({ data: changes.filter(isNew).map(({ slug, data }) => ({ ...data, slug })) });
  for (const { id, data } of known(changes)) await tx.family.update({ where: { id }, data });
}

async function writeModels(tx: Tx, changes: readonly Change<'models'>[]): Promise<void> {
  if (changes.length === 0) return;
  const families = await tx.family.findMany({ select: { id: true, slug: true } });
  const familyIds = new Map(families.map((family) => [family.slug, family.id]));
  const columns = ({ data: { familySlug, ...data } }: Change<'models'>) => ({
    ...data,
    familyId: idOf(familyIds, familySlug),
  });
  await tx.model.createMany({
    data: changes.filter(isNew).map((change) => ({ ...columns(change), slug: change.slug })),
  });
  const rows = known(changes).map((change) => ({ ...columns(change), id: change.id }));
  if (rows.length === 0) return;
  await tx.$executeRaw`
    UPDATE "model" AS m SET
      "familyId" = v."familyId", "maker" = v."maker", "name" = v."name", "aliases" = v."aliases",
      "accessories" = v."accessories", "weightGrams" = v."weightGrams", "lengthMm" = v."lengthMm",
      "widthMm" = v."widthMm", "heightMm" = v."heightMm", "serialPlace" = v."serialPlace",
      "serialExample" = v."serialExample", "serialPattern" = v."serialPattern", "serialRule" = v."serialRule",
      "battery" = v."battery", "batteryWh" = v."batteryWh", "isMainsPowered" = v."isMainsPowered",
      "isListed" = v."isListed"
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS v(
      "id" text, "familyId" text, "maker" text, "name" text, "aliases" text[], "accessories" text[],
      "weightGrams" int, "lengthMm" int, "widthMm" int, "heightMm" int, "serialPlace" text, "serialExample" text,
      "serialPattern" text, "serialRule" text, "battery" text, "batteryWh" float8, "isMainsPowered" boolean,
      "isListed" boolean)
    WHERE m."id" = v."id"`;
}

async function writeRepairs(tx: Tx, changes: readonly Change<'repairs'>[], by: ChangedBy): Promise<void> {
  if (changes.length === 0) return;
  const models = await tx.model.findMany({ select: { id: true, slug: true } });
  const modelIds = new Map(models.map((model) => [model.slug, model.id]));
  const policies = await tx.policy.findMany({ select: { id: true, name: true } });
  const policyIds = new Map(policies.map((policy) => [policy.name, policy.id]));
  const columns = ({ data: { modelSlug: _, policy, parts: __, ...data } }: Change<'repairs'>) => ({
    ...data,
    policyId: idOf(policyIds, policy),
  });
  const added = changes.filter(isNew);
  const made = await tx.repair.createManyAndReturn({
    data: added.map((change) => ({
      ...columns(change),
      slug: change.slug,
      modelId: idOf(modelIds, change.data.modelSlug),
    })),
    select: { id: true, modelId: true, slug: true },
  });
  await writeFirstSheets(
    tx,
    made.map((repair) => repair.id),
    by,
  );
  const madeIds = new Map(made.map((repair) => [`${repair.modelId} ${repair.slug}`, repair.id]));
  const withIds = changes.map((change) => ({
    ...change,
    id: change.id ?? idOf(madeIds, `${idOf(modelIds, change.data.modelSlug)} ${change.slug}`),
    isNew: change.id === null,
  }));
  await updateRepairs(
    tx,
    withIds.filter((change) => !change.isNew).map((change) => ({ ...columns(change), id: change.id })),
  );
  const priced = withIds.filter((change) => change.isNew || doChange(change.fields, PRICE_COLUMNS));
  await writeRepairPrices(
    tx,
    priced.map((change) => change.id),
    by,
  );
  await writeParts(
    tx,
    withIds.filter((change) => change.isNew || doChange(change.fields, ['parts'])),
  );
}

const PRICE_COLUMNS = ['price', 'tax', 'taxRate'];

function doChange(fields: readonly { column: string }[], columns: readonly string[]): boolean {
  return fields.some((field) => columns.includes(field.column));
}

async function updateRepairs(tx: Tx, rows: readonly Record<string, unknown>[]): Promise<void> {
  if (rows.length === 0) return;
  await tx.$executeRaw`
    UPDATE "repair" AS r SET
      "policyId" = v."policyId", "name" = v."name", "summary" = v."summary", "priceMinor" = v."priceMinor",
      "taxCategory" = v."taxCategory", "taxRateBps" = v."taxRateBps", "minutes" = v."minutes",
      "workingDays" = v."workingDays", "symptoms" = v."symptoms", "isListed" = v."isListed"
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS v(
      "id" text, "policyId" text, "name" text, "summary" text, "priceMinor" int, "taxCategory" text,
      "taxRateBps" int, "minutes" int, "workingDays" int, "symptoms" text[], "isListed" boolean)
    WHERE r."id" = v."id"`;
}

async function writeFirstSheets(tx: Tx, repairIds: readonly string[], by: ChangedBy): Promise<void> {
  const ids = [...repairIds];
  await tx.$executeRaw`
    INSERT INTO "check_sheet" ("id", "repairId", "version", "createdAt")
    SELECT gen_random_uuid()::text, "repairId", 1, ${by.now}::timestamptz FROM unnest(${ids}::text[]) AS "repairId"`;
  await tx.$executeRaw`
    INSERT INTO "check_item" ("id", "sheetId", "position", "kind", "label", "choices", "passing")
    SELECT gen_random_uuid()::text, "id", 1, ${FIRST_CHECK.kind}::text, ${FIRST_CHECK.label}::text, '{}', '{}'
    FROM "check_sheet" WHERE "repairId" = ANY(${ids}::text[])`;
}

async function writeParts(
  tx: Tx,
  changes: readonly { id: string; isNew: boolean; data: Change<'repairs'>['data'] }[],
): Promise<void> {
  const parts = await tx.part.findMany({ select: { id: true, code: true } });
  const partIds = new Map(parts.map((part) => [part.code, part.id]));
  const old = changes.filter((change) => !change.isNew).map((change) => change.id);
  if (old.length > 0) await tx.repairPart.deleteMany({ where: { repairId: { in: old } } });
  await tx.repairPart.createMany({
    data: changes.flatMap(({ id, data }) =>
      data.parts.map(({ code, quantity }) => ({ repairId: id, partId: idOf(partIds, code), quantity })),
    ),
  });
}

// The plan was made from these very rows; one that is missing is a fault of the program.
function idOf(ids: ReadonlyMap<string, string>, key: string): string {
  const id = ids.get(key);
  if (id === undefined) throw new Error(`The import plan names ${key}, which is not there`);
  return id;
}
