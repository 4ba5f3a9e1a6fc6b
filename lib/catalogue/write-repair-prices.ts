import type { Tx } from '@/lib/db/transaction';

/** Who changes the catalogue and when; null for the program itself. */
export type ChangedBy = { now: Date; userId: string | null };

export type PriceNow = { repairId: string; priceMinor: number; taxCategory: string; taxRateBps: number };

/** Writes what repairs cost from now on into their history, inside the transaction that changes the prices. */
export async function writeRepairPrices(tx: Tx, prices: readonly PriceNow[], by: ChangedBy): Promise<void> {
  if (prices.length === 0) return;
  await tx.repairPrice.createMany({
    data: prices.map(({ repairId, priceMinor, taxCategory, taxRateBps }) => ({
      repairId,
      priceMinor,
      taxCategory,
      taxRateBps,
      since: by.now,
      userId: by.userId,
    })),
  });
}
