import { randomUUID } from 'node:crypto';
import type { Tx } from '@/lib/db/transaction';
import { FIRST_CHECK } from './rules/first-check';
import type { ImportPlan } from './rules/plan-import';
import { type ChangedBy, writeRepairPrices } from './write-repair-prices';

type Change<K extends 'families' | 'models' | 'repairs'> = ImportPlan[K][number];

/**
 * Writes what a plan without problems says, inside the caller's transaction. Rows travel as one JSON document for each table
 * and are written by one statement: row by row, or as thousands of parameters, 5,000 of them took several times as long.
 */
export async function writeImport(tx: Tx, plan: ImportPlan, by: ChangedBy): Promise<void> {
  await writeFamilies(tx, plan.families);
  await writeModels(tx, plan.models);
  await writeRepairs(tx, plan.repairs, by);
}

async function writeFamilies(tx: Tx, changes: readonly Change<'families'>[]): Promise<void> {
  if (changes.length === 0) return;
  const rows = changes.map(({ id, slug, data }) => ({ ...data, slug, id: id ?? randomUUID() }));
  await tx.$executeRaw`
    INSERT INTO "family" ("id", "slug", "name", "position")
    SELECT "id", "slug", "name", "position" FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS v(
      "id" text, "slug" text, "name" text, "position" int)
    ON CONFLICT ("id") DO UPDATE SET "name" = EXCLUDED."name", "position" = EXCLUDED."position"`;
}

async function writeModels(tx: Tx, changes: readonly Change<'models'>[]): Promise<void> {
  if (changes.length === 0) return;
  const families = await tx.family.findMany({ select: { id: true, slug: true } });
  const familyIds = new Map(families.map((family) => [family.slug, family.id]));
  const rows = changes.map(({ id, slug, data: { familySlug, ...data } }) => ({
    ...data,
    id: id ?? randomUUID(),
    slug,
    familyId: idOf(familyIds, familySlug),
  }));
  await tx.$executeRaw`
    INSERT INTO "model" ("id", "slug", "familyId", "maker", "name", "aliases", "accessories", "weightGrams",
      "lengthMm", "widthMm", "heightMm", "tariffNumber", "serialPlace", "serialExample", "serialPattern", "serialRule", "battery",
      "batteryWh", "isMainsPowered", "isListed")
    SELECT "id", "slug", "familyId", "maker", "name", "aliases", "accessories", "weightGrams",
      "lengthMm", "widthMm", "heightMm", "tariffNumber", "serialPlace", "serialExample", "serialPattern", "serialRule", "battery",
      "batteryWh", "isMainsPowered", "isListed"
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS v(
      "id" text, "slug" text, "familyId" text, "maker" text, "name" text, "aliases" text[], "accessories" text[],
      "weightGrams" int, "lengthMm" int, "widthMm" int, "heightMm" int, "tariffNumber" text, "serialPlace" text, "serialExample" text,
      "serialPattern" text, "serialRule" text, "battery" text, "batteryWh" float8, "isMainsPowered" boolean,
      "isListed" boolean)
    ON CONFLICT ("id") DO UPDATE SET
      "familyId" = EXCLUDED."familyId", "maker" = EXCLUDED."maker", "name" = EXCLUDED."name",
      "aliases" = EXCLUDED."aliases", "accessories" = EXCLUDED."accessories", "weightGrams" = EXCLUDED."weightGrams",
      "lengthMm" = EXCLUDED."lengthMm", "widthMm" = EXCLUDED."widthMm", "heightMm" = EXCLUDED."heightMm",
      "tariffNumber" = EXCLUDED."tariffNumber",
      "serialPlace" = EXCLUDED."serialPlace", "serialExample" = EXCLUDED."serialExample",
      "serialPattern" = EXCLUDED."serialPattern", "serialRule" = EXCLUDED."serialRule",
      "battery" = EXCLUDED."battery", "batteryWh" = EXCLUDED."batteryWh",
      "isMainsPowered" = EXCLUDED."isMainsPowered", "isListed" = EXCLUDED."isListed"`;
}

async function writeRepairs(tx: Tx, all: readonly Change<'repairs'>[], by: ChangedBy): Promise<void> {
  if (all.length === 0) return;
  const models = await tx.model.findMany({ select: { id: true, slug: true } });
  const modelIds = new Map(models.map((model) => [model.slug, model.id]));
  const policies = await tx.policy.findMany({ select: { id: true, name: true } });
  const policyIds = new Map(policies.map((policy) => [policy.name, policy.id]));
  const changes = all.map(({ id, ...change }) => ({
    ...change,
    id: id ?? randomUUID(),
    isNew: id === null,
  }));
  const rows = changes.map(({ id, slug, data: { modelSlug, policy, parts: _, ...data } }) => ({
    ...data,
    id,
    slug,
    modelId: idOf(modelIds, modelSlug),
    policyId: idOf(policyIds, policy),
  }));
  await tx.$executeRaw`
    INSERT INTO "repair" ("id", "slug", "modelId", "policyId", "name", "summary", "priceMinor", "taxCategory",
      "taxRateBps", "minutes", "workingDays", "symptoms", "isListed")
    SELECT "id", "slug", "modelId", "policyId", "name", "summary", "priceMinor", "taxCategory",
      "taxRateBps", "minutes", "workingDays", "symptoms", "isListed"
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS v(
      "id" text, "slug" text, "modelId" text, "policyId" text, "name" text, "summary" text, "priceMinor" int,
      "taxCategory" text, "taxRateBps" int, "minutes" int, "workingDays" int, "symptoms" text[], "isListed" boolean)
    ON CONFLICT ("id") DO UPDATE SET
      "policyId" = EXCLUDED."policyId", "name" = EXCLUDED."name", "summary" = EXCLUDED."summary",
      "priceMinor" = EXCLUDED."priceMinor", "taxCategory" = EXCLUDED."taxCategory",
      "taxRateBps" = EXCLUDED."taxRateBps", "minutes" = EXCLUDED."minutes",
      "workingDays" = EXCLUDED."workingDays", "symptoms" = EXCLUDED."symptoms", "isListed" = EXCLUDED."isListed"`;
  const touching = (columns: readonly string[]) =>
    changes.filter((change) => change.isNew || change.fields.some((field) => columns.includes(field.column)));
  await writeFirstSheets(
    tx,
    changes.filter((change) => change.isNew).map((change) => change.id),
    by,
  );
  await writeRepairPrices(
    tx,
    touching(['price', 'tax', 'taxRate']).map((change) => change.id),
    by,
  );
  await writeParts(tx, touching(['parts']));
}

async function writeFirstSheets(tx: Tx, repairIds: string[], by: ChangedBy): Promise<void> {
  await tx.$executeRaw`
    INSERT INTO "check_sheet" ("id", "repairId", "version", "createdAt")
    SELECT gen_random_uuid()::text, "repairId", 1, ${by.now}::timestamptz
    FROM unnest(${repairIds}::text[]) AS "repairId"`;
  await tx.$executeRaw`
    INSERT INTO "check_item" ("id", "sheetId", "position", "kind", "label", "choices", "passing")
    SELECT gen_random_uuid()::text, "id", 1, ${FIRST_CHECK.kind}::text, ${FIRST_CHECK.label}::text, '{}', '{}'
    FROM "check_sheet" WHERE "repairId" = ANY(${repairIds}::text[])`;
}

async function writeParts(
  tx: Tx,
  changes: readonly { id: string; data: Change<'repairs'>['data'] }[],
): Promise<void> {
  const ids = changes.map((change) => change.id);
  await tx.$executeRaw`DELETE FROM "repair_part" WHERE "repairId" = ANY(${ids}::text[])`;
  const rows = changes.flatMap(({ id, data }) => data.parts.map((part) => ({ ...part, repairId: id })));
  await tx.$executeRaw`
    INSERT INTO "repair_part" ("repairId", "partId", "quantity")
    SELECT v."repairId", p."id", v."quantity"
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS v("repairId" text, "code" text, "quantity" int)
    JOIN "part" AS p ON p."code" = v."code"`;
}

// The plan was made from these very rows; one that is missing is a fault of the program.
function idOf(ids: ReadonlyMap<string, string>, key: string): string {
  const id = ids.get(key);
  if (id === undefined) throw new Error(`The import plan names ${key}, which is not there`);
  return id;
}
