import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { readTerms } from '@/lib/warranty/stored-terms';
import { type OutlineFamily, type OutlineModel, readOutline } from './price-outline';
import { customerPrice } from './rules/price';
import { pageOfModels } from './rules/price-pages';
import { storedTax } from './stored';

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

export type PricePage = {
  /** kinds of device with a repair that fits the search, whatever kind is chosen */
  kinds: PriceKind[];
  /** the kind asked for, where it has one */
  chosen: PriceKind | null;
  /** repairs that fit, on all pages */
  found: number;
  families: ListedFamily[];
  page: number;
  pages: number;
};

export type PriceKind = { slug: string; name: string; repairs: number };

/**
 * One page of the price list, family by family; with a search only what fits it, the best first. Only the repairs of this page
 * are read in full: a list of 5,000 costs little more than one of fifty.
 */
export async function readPricePage(
  o: { search: string; kind: string | undefined; page: number; pricesIncludeTax: boolean },
  client: Tx = db,
): Promise<PricePage> {
  const outline = await readOutline(o.search, client);
  const kinds = outline.map(({ slug, name, models }) => ({ slug, name, repairs: repairsIn(models) }));
  const chosen = kinds.find(({ slug }) => slug === o.kind) ?? null;
  const sought = chosen ? outline.filter(({ slug }) => slug === chosen.slug) : outline;
  const { families, page, pages } = pageOfModels<OutlineModel, OutlineFamily>(sought, o.page);
  const full = await readModels(
    families.flatMap((family) => family.models),
    o.pricesIncludeTax,
    client,
  );
  return {
    kinds,
    chosen,
    found: sought.reduce((sum, { models }) => sum + repairsIn(models), 0),
    families: families.map((family) => ({
      ...family,
      models: family.models.flatMap(({ id }) => full.get(id) ?? []),
    })),
    page,
    pages,
  };
}

function repairsIn(models: readonly OutlineModel[]): number {
  return models.reduce((sum, { repairIds }) => sum + repairIds.length, 0);
}

/** Models with these of their repairs, in the order given. */
async function readModels(
  outlines: readonly OutlineModel[],
  pricesIncludeTax: boolean,
  client: Tx,
): Promise<Map<string, ListedModel>> {
  const rows = await client.model.findMany({
    where: { id: { in: outlines.map(({ id }) => id) } },
    select: {
      id: true,
      slug: true,
      maker: true,
      name: true,
      repairs: {
        where: { id: { in: outlines.flatMap(({ repairIds }) => repairIds) } },
        select: listedRepairSelect,
      },
    },
  });
  const placeOf = new Map(outlines.flatMap(({ repairIds }) => repairIds.map((id, place) => [id, place])));
  const place = ({ id }: { id: string }) => placeOf.get(id) ?? 0;
  return new Map(
    rows.map(({ repairs, ...model }) => [
      model.id,
      {
        ...model,
        repairs: repairs
          .map((repair) => listedRepair(repair, pricesIncludeTax))
          .sort((a, b) => place(a) - place(b)),
      },
    ]),
  );
}
