import type { Tx } from '@/lib/db/transaction';
import { readHeldWorkshop } from '@/lib/workshop/records';

/** Who changes the catalogue and when; null for the program itself. */
export type ChangedBy = { now: Date; userId: string | null };

/**
 * Writes what these repairs cost from now on into their history, inside the transaction that changed them. The price is taken
 * from the rows themselves, so that the history cannot say anything else than the list.
 */
export async function writeRepairPrices(tx: Tx, repairIds: readonly string[], by: ChangedBy): Promise<void> {
  const { pricesIncludeTax } = await readHeldWorkshop(tx);
  await tx.$executeRaw`
    INSERT INTO "repair_price" ("id", "repairId", "priceMinor", "isGross", "taxCategory", "taxRateBps", "since", "userId")
    SELECT gen_random_uuid()::text, "id", "priceMinor", ${pricesIncludeTax}::boolean, "taxCategory", "taxRateBps",
      ${by.now}::timestamptz, ${by.userId}::text
    FROM "repair" WHERE "id" = ANY(${[...repairIds]}::text[])`;
}
