import { db } from '@/lib/db/client';
import type { PriceKind } from './price-list';
import { LISTED_REPAIRS } from './price-outline';
import { customerPrice } from './rules/price';
import { storedTax } from './stored';

/** One kind of device on the price list; `fromMinor` is its lowest price, tax included, in minor units. */
export type PricedKind = PriceKind & { fromMinor: number };

type Row = PriceKind & { taxCategory: string; taxRateBps: number; priceMinor: number };

/** Every kind of device with a listed repair, in the order of the list. */
export async function readPricedKinds(pricesIncludeTax: boolean): Promise<PricedKind[]> {
  // Under one rate of tax the lowest price is the lowest with tax; there are few rates, and many repairs.
  const rows = await db.$queryRaw<Row[]>`
    SELECT f."slug", f."name", r."taxCategory", r."taxRateBps", COUNT(*)::int AS repairs, MIN(r."priceMinor") AS "priceMinor"
    ${LISTED_REPAIRS}
    GROUP BY f."id", r."taxCategory", r."taxRateBps" ORDER BY f."position", f."name", f."id"`;
  const kinds = new Map<string, PricedKind>();
  for (const { slug, name, repairs, ...price } of rows) {
    const { gross } = customerPrice(
      { ...price, taxCategory: storedTax.parse(price.taxCategory) },
      pricesIncludeTax,
    );
    const kind = kinds.get(slug) ?? { slug, name, repairs: 0, fromMinor: gross };
    kinds.set(slug, {
      ...kind,
      repairs: kind.repairs + repairs,
      fromMinor: Math.min(kind.fromMinor, gross),
    });
  }
  return [...kinds.values()];
}
