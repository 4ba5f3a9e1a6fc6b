import { db } from '@/lib/db/client';
import { IN_FORCE } from './stored-stock';

/** Lots that still hold pieces and were not recalled, oldest first within a part, so that old stock goes first. */
export async function lotsInStock() {
  return db.lot.findMany({
    where: { inStock: { gt: 0 }, recalls: { none: IN_FORCE } },
    orderBy: [{ part: { name: 'asc' } }, { receivedOn: 'asc' }],
    select: { id: true, code: true, inStock: true, part: { select: { name: true } } },
  });
}
