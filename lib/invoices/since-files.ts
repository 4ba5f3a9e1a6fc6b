import { db } from '@/lib/db/client';
import { inOrder, newestFirst } from '@/lib/db/in-order';
import type { Tx } from '@/lib/db/transaction';

/** A file of payments that were entered after the journal of their month was taken, and when that file was. */
export type SinceFile = { id: string; month: string; at: Date; payments: number };

/** The newest ones, which can be had again. */
export async function listSinceFiles(most: number): Promise<SinceFile[]> {
  return db.$queryRaw<SinceFile[]>`
    SELECT t."id", t."month", t."at", COUNT(*)::int AS payments
    FROM "journal_taking" t JOIN "payment" p ON p."takingId" = t."id"
    WHERE EXISTS (SELECT 1 FROM "journal_taking" f WHERE f."month" = t."month" AND (f."at", f."id") < (t."at", t."id"))
    GROUP BY t."id" ORDER BY t."at" DESC, t."id" DESC LIMIT ${most}`;
}

/** The newest such file of a month, or the one of an id; null where there is none. The first one taken of a month is the whole journal. */
export async function findSinceFile(
  { month, id }: { month: string; id?: string },
  client: Tx = db,
): Promise<string | null> {
  const first = await client.journalTaking.findFirst({
    where: { month },
    orderBy: inOrder,
    select: { id: true },
  });
  if (!first || first.id === id) return null;
  const found = await client.journalTaking.findFirst({
    where: { month, id: id ?? { not: first.id }, payments: { some: {} } },
    orderBy: newestFirst,
    select: { id: true },
  });
  return found?.id ?? null;
}
