import { db } from '@/lib/db/client';

/** Payments of one month and currency that no journal has, although one of that month was taken; `amount` in minor units. */
export type EnteredSince = {
  month: string;
  currency: string;
  payments: number;
  amount: number;
  /** when the month's journal was taken last */
  takenAt: Date;
};

/** What the bookkeeper has not been given of months that were handed over, oldest month first. */
export async function listEnteredSince(): Promise<EnteredSince[]> {
  return db.$queryRaw<EnteredSince[]>`
    WITH taken AS (SELECT "month", MAX("at") AS at FROM "journal_taking" GROUP BY "month")
    SELECT t."month", p."currency", COUNT(*)::int AS payments, SUM(p."amountMinor")::float8 AS amount, t.at AS "takenAt"
    FROM "payment" p JOIN taken t ON t."month" = TO_CHAR(p."receivedOn", 'YYYY-MM')
    WHERE p."takingId" IS NULL GROUP BY t."month", t.at, p."currency" ORDER BY 1, 2`;
}

/** Those of some months whose journal was taken. */
export async function takenMonths(months: readonly string[]): Promise<string[]> {
  if (months.length === 0) return [];
  const rows = await db.journalTaking.findMany({
    where: { month: { in: [...months] } },
    distinct: ['month'],
    orderBy: { month: 'asc' },
    select: { month: true },
  });
  return rows.map(({ month }) => month);
}
