import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { readWorkshop } from '@/lib/workshop/records';
import { customerPrice } from './rules/price';
import { rankEntries } from './rules/search';
import { readTerms, storedTax } from './stored';

/** A repair as a customer reads it. */
export type ListedRepair = {
  id: string;
  slug: string;
  name: string;
  summary: string;
  /** With tax, minor units. */
  grossMinor: number;
  workingDays: number;
  symptoms: string[];
  /** ISO 8601, null where not covered. */
  workTerm: string | null;
  partsTerm: string | null;
};

export type ListedModel = {
  id: string;
  slug: string;
  maker: string;
  name: string;
  aliases: string[];
  repairs: ListedRepair[];
};
export type ListedFamily = { id: string; slug: string; name: string; models: ListedModel[] };

const newestVersion = { orderBy: { version: 'desc' }, take: 1 } as const;

export const listedRepairSelect = {
  id: true,
  slug: true,
  name: true,
  summary: true,
  priceMinor: true,
  taxCategory: true,
  taxRateBps: true,
  workingDays: true,
  symptoms: true,
  policy: { select: { versions: newestVersion } },
} as const;

type RepairRow = {
  id: string;
  slug: string;
  name: string;
  summary: string;
  priceMinor: number;
  taxCategory: string;
  taxRateBps: number;
  workingDays: number;
  symptoms: string[];
  policy: { versions: Record<string, unknown>[] };
};

export function listedRepair(row: RepairRow, pricesIncludeTax: boolean): ListedRepair {
  const version = row.policy.versions[0];
  const terms = version ? readTerms(version) : null;
  const price = { ...row, taxCategory: storedTax.parse(row.taxCategory) };
  return {
    id: row.id,
    slug: row.slug,
    name: row.name,
    summary: row.summary,
    grossMinor: customerPrice(price, pricesIncludeTax).gross,
    workingDays: row.workingDays,
    symptoms: row.symptoms,
    workTerm: terms?.workTerm ?? null,
    partsTerm: terms?.partsTerm ?? null,
  };
}

/**
 * The price list, family by family; with a search only what fits it, the best first. Families and models without a listed
 * repair are left out. A price list of some hundred lines is read whole and searched here, which forgives typos that SQL does not.
 */
export async function priceList(search = '', client: Tx = db): Promise<ListedFamily[]> {
  const { pricesIncludeTax } = await readWorkshop(client);
  const rows = await client.family.findMany({
    orderBy: [{ position: 'asc' }, { name: 'asc' }],
    select: {
      id: true,
      slug: true,
      name: true,
      models: {
        where: { isListed: true },
        orderBy: [{ maker: 'asc' }, { name: 'asc' }],
        select: {
          id: true,
          slug: true,
          maker: true,
          name: true,
          aliases: true,
          repairs: { where: { isListed: true }, orderBy: { name: 'asc' }, select: listedRepairSelect },
        },
      },
    },
  });
  const families = rows.map((family) => ({
    ...family,
    models: family.models.map((model) => ({
      ...model,
      repairs: model.repairs.map((repair) => listedRepair(repair, pricesIncludeTax)),
    })),
  }));
  return withoutEmpty(search.trim() === '' ? families : foundIn(families, search));
}

function foundIn(families: readonly ListedFamily[], search: string): ListedFamily[] {
  const entries = families.flatMap((family) =>
    family.models.flatMap((model) =>
      model.repairs.map((repair) => ({
        id: repair.id,
        fields: [
          { text: `${model.maker} ${model.name}`, weight: 4 },
          { text: model.aliases.join(' '), weight: 4 },
          { text: repair.name, weight: 3 },
          { text: family.name, weight: 2 },
          { text: repair.symptoms.join(' '), weight: 2 },
          { text: repair.summary, weight: 1 },
        ],
      })),
    ),
  );
  const place = new Map(rankEntries(search, entries).map((hit, i) => [hit.id, i]));
  const byPlace = (a: number, b: number) => a - b;
  const best = (ids: readonly string[]) =>
    Math.min(...ids.map((id) => place.get(id) ?? Number.MAX_SAFE_INTEGER));
  const bestOfModel = (model: ListedModel) => best(model.repairs.map((repair) => repair.id));
  const bestOfFamily = (family: ListedFamily) => Math.min(...family.models.map(bestOfModel));
  return families
    .map((family) => ({
      ...family,
      models: family.models
        .map((model) => ({
          ...model,
          repairs: model.repairs
            .filter((repair) => place.has(repair.id))
            .sort((a, b) => byPlace(best([a.id]), best([b.id]))),
        }))
        .sort((a, b) => byPlace(bestOfModel(a), bestOfModel(b))),
    }))
    .sort((a, b) => byPlace(bestOfFamily(a), bestOfFamily(b)));
}

function withoutEmpty(families: readonly ListedFamily[]): ListedFamily[] {
  return families
    .map((family) => ({ ...family, models: family.models.filter((model) => model.repairs.length > 0) }))
    .filter((family) => family.models.length > 0);
}
