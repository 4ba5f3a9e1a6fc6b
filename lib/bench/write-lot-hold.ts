import { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';
import { lotsInUnit, type SoughtUnit } from './stored-recalls';

/**
 * Waits for whoever recalls a lot of which a piece is in a unit, and keeps others from recalling one until the transaction ends. Asked
 * before the job is written: whoever recalls locks the lot first and then writes the jobs.
 */
export async function holdLotsOf(tx: Tx, unit: SoughtUnit): Promise<void> {
  const ids = await lotsInUnit(unit, tx);
  if (ids.length === 0) return;
  await tx.$queryRaw`SELECT 1 FROM "lot" WHERE "id" IN (${Prisma.join(ids)}) ORDER BY "id" FOR SHARE`;
}
