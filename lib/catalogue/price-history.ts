import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import type { TaxCategory } from '@/lib/money/tax';
import { storedTax } from './stored';

export type PastPrice = {
  id: string;
  /** Minor units. */
  priceMinor: number;
  /** With tax or before it, as the workshop kept its prices when this one was set. */
  isGross: boolean;
  taxCategory: TaxCategory;
  taxRateBps: number;
  since: Date;
  /** Name of the person who set it; null for the program itself. */
  who: string | null;
};

/** What a repair has cost since when, the newest first; the figure of its first row is the price of today. */
export async function priceHistory(repairId: string, client: Tx = db): Promise<PastPrice[]> {
  const rows = await client.repairPrice.findMany({
    where: { repairId },
    orderBy: [{ since: 'desc' }, { id: 'desc' }],
  });
  const ids = rows.flatMap((row) => row.userId ?? []);
  const people = await client.user.findMany({ where: { id: { in: ids } }, select: { id: true, name: true } });
  const names = new Map(people.map((person) => [person.id, person.name]));
  return rows.map(({ id, priceMinor, isGross, taxCategory, taxRateBps, since, userId }) => ({
    id,
    priceMinor,
    isGross,
    taxCategory: storedTax.parse(taxCategory),
    taxRateBps,
    since,
    who: userId === null ? null : (names.get(userId) ?? 'somebody who left'),
  }));
}
