import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import type { TaxCategory } from '@/lib/money/tax';
import { markOf } from '@/lib/shown-row';
import type { PolicyTerms } from '@/lib/warranty/rules/terms';
import { readTerms } from '@/lib/warranty/stored-terms';
import { unitName } from './rules/unit-name';
import { FAMILY_FIELDS, MODEL_FIELDS, POLICY_FIELDS, REPAIR_FIELDS } from './shown-fields';
import { readCheck, storedTax } from './stored';

/** Families with their models and how much is listed of each, for the catalogue's first page. */
export async function listCatalogue() {
  return db.family.findMany({
    orderBy: [{ position: 'asc' }, { name: 'asc' }],
    select: {
      id: true,
      slug: true,
      name: true,
      position: true,
      models: {
        orderBy: [{ maker: 'asc' }, { name: 'asc' }],
        select: {
          id: true,
          slug: true,
          maker: true,
          name: true,
          isListed: true,
          battery: true,
          batteryWh: true,
          repairs: { select: { isListed: true } },
        },
      },
    },
  });
}

/** One family as its form shows it; null when there is none. */
export async function readFamily(id: string) {
  const family = await db.family.findUnique({ where: { id }, select: FAMILY_FIELDS });
  return family && { ...family, mark: markOf(FAMILY_FIELDS, family) };
}

/** One model whole, with its repairs, by id; null when there is none. */
export async function readModel(id: string) {
  const model = await db.model.findUnique({
    where: { id },
    include: {
      family: { select: { id: true, name: true } },
      repairs: {
        orderBy: { name: 'asc' },
        select: {
          id: true,
          name: true,
          priceMinor: true,
          minutes: true,
          workingDays: true,
          isListed: true,
          policy: { select: { name: true } },
          sheets: {
            orderBy: { version: 'desc' },
            take: 1,
            select: { version: true, _count: { select: { checks: true } } },
          },
        },
      },
    },
  });
  return model && { ...model, mark: markOf(MODEL_FIELDS, model) };
}

export type SheetVersion = {
  id: string;
  version: number;
  createdAt: Date;
  /** Jobs that were or will be proved on it. */
  jobs: number;
  checks: (CheckDraft & { id: string; position: number })[];
};

/** One repair with every version of its check sheet, newest first; null when there is none. */
export async function readRepair(id: string) {
  const repair = await db.repair.findUnique({
    where: { id },
    include: {
      model: { select: { id: true, slug: true, maker: true, name: true, isMainsPowered: true } },
      policy: { select: { id: true, name: true } },
      sheets: {
        orderBy: { version: 'desc' },
        include: { checks: { orderBy: { position: 'asc' } }, _count: { select: { jobs: true } } },
      },
    },
  });
  if (!repair) return null;
  const sheets: SheetVersion[] = repair.sheets.map((sheet) => ({
    id: sheet.id,
    version: sheet.version,
    createdAt: sheet.createdAt,
    jobs: sheet._count.jobs,
    checks: sheet.checks.map((check) => ({ ...readCheck(check), id: check.id, position: check.position })),
  }));
  return { ...repair, sheets, mark: markOf(REPAIR_FIELDS, repair) };
}

export type PolicyVersionRow = {
  id: string;
  version: number;
  createdAt: Date;
  certificates: number;
  terms: PolicyTerms;
};

const policyInclude = {
  _count: { select: { repairs: true } },
  versions: {
    orderBy: { version: 'desc' },
    include: { _count: { select: { certificates: true } } },
  },
} as const;

type PolicyRow = {
  id: string;
  name: string;
  retiredAt: Date | null;
  _count: { repairs: number };
  versions: ({ id: string; version: number; createdAt: Date; _count: { certificates: number } } & Record<
    string,
    unknown
  >)[];
};

function policyOf(row: PolicyRow) {
  const versions: PolicyVersionRow[] = row.versions.map((version) => ({
    id: version.id,
    version: version.version,
    createdAt: version.createdAt,
    certificates: version._count.certificates,
    terms: readTerms(version),
  }));
  const { id, name, retiredAt } = row;
  return { id, name, isRetired: retiredAt !== null, repairs: row._count.repairs, versions };
}

/** Every policy with its versions, newest first. */
export async function listPolicies() {
  const rows = await db.policy.findMany({ orderBy: { name: 'asc' }, include: policyInclude });
  return rows.map(policyOf);
}

/** One policy with its versions; null when there is none. */
export async function readPolicy(id: string) {
  const row = await db.policy.findUnique({ where: { id }, include: policyInclude });
  if (!row) return null;
  return {
    ...policyOf(row),
    mark: markOf(POLICY_FIELDS, { name: row.name, version: row.versions[0]?.version }),
  };
}

/** Names to choose from in the forms of the catalogue; of the policies that are retired only the one a repair has. */
export async function listChoices(repairId?: string) {
  const [families, policies] = await Promise.all([
    db.family.findMany({ orderBy: { position: 'asc' }, select: { id: true, name: true } }),
    db.policy.findMany({
      where: {
        OR: [{ retiredAt: null }, ...(repairId ? [{ repairs: { some: { id: repairId } } }] : [])],
      },
      orderBy: { name: 'asc' },
      select: { id: true, name: true },
    }),
  ]);
  return { families, policies };
}

export type RepairForQuote = {
  id: string;
  name: string;
  /** Maker and name. */
  modelName: string;
  /** As the workshop keeps its prices, minor units. */
  priceMinor: number;
  taxCategory: TaxCategory;
  taxRateBps: number;
  minutes: number;
  workingDays: number;
  policyName: string;
};

/** Every repair that a quote can be built on, listed or not; those of the model first, then by model and name. */
export async function repairsForQuote(modelId: string | null, client: Tx = db): Promise<RepairForQuote[]> {
  const rows = await client.repair.findMany({
    orderBy: [{ model: { maker: 'asc' } }, { model: { name: 'asc' } }, { name: 'asc' }],
    select: {
      id: true,
      name: true,
      modelId: true,
      priceMinor: true,
      taxCategory: true,
      taxRateBps: true,
      minutes: true,
      workingDays: true,
      model: { select: { maker: true, name: true } },
      policy: { select: { name: true } },
    },
  });
  const [own, others] = [
    rows.filter((row) => row.modelId === modelId),
    rows.filter((row) => row.modelId !== modelId),
  ];
  return [...own, ...others].map(({ modelId: _, model, policy, ...repair }) => ({
    ...repair,
    taxCategory: storedTax.parse(repair.taxCategory),
    modelName: unitName(model),
    policyName: policy.name,
  }));
}

/** Taxes that the catalogue's repairs carry, each once; the highest rate first. */
export async function taxRatesInUse(client: Tx = db): Promise<{ category: TaxCategory; rateBps: number }[]> {
  const rows = await client.repair.groupBy({
    by: ['taxCategory', 'taxRateBps'],
    orderBy: [{ taxRateBps: 'desc' }, { taxCategory: 'asc' }],
  });
  return rows.map((row) => ({ category: storedTax.parse(row.taxCategory), rateBps: row.taxRateBps }));
}

/** The tax that a repair was given last, by the history of prices; null before the first. */
export async function lastTaxOfRepair(
  client: Tx = db,
): Promise<{ category: TaxCategory; rateBps: number } | null> {
  const row = await client.repairPrice.findFirst({
    orderBy: [{ since: 'desc' }, { id: 'desc' }],
    select: { taxCategory: true, taxRateBps: true },
  });
  return row && { category: storedTax.parse(row.taxCategory), rateBps: row.taxRateBps };
}
