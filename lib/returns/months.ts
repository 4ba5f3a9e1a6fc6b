import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import { type CoverClock, IS_BACK, IS_WATCHED, unitRows } from './cover-sql';

/** Units by the month they were sent back in; only those that could be watched for ninety days count. */
export type MonthCount = {
  /** 'YYYY-MM' */
  month: string;
  /** sent back in the month */
  sent: number;
  /** of those, watched for the whole time, or longer */
  watched: number;
  /** of the watched ones, back within it */
  returned: number;
};

/** What came back within ninety days, by month of dispatch, the oldest first; at most so many months back. */
export async function monthCounts(clock: CoverClock, months: number): Promise<MonthCount[]> {
  const since = Prisma.sql`
    w."issuedOn" >= DATE_TRUNC('month', ${clock.today}::date) - MAKE_INTERVAL(months => ${months - 1}::int)`;
  return db.$queryRaw<MonthCount[]>`
    WITH ${unitRows(clock, since)},
    daily AS (
      SELECT "issuedOn", COUNT(*) AS sent, COUNT(*) FILTER (WHERE ${IS_WATCHED}) AS watched, COUNT(*) FILTER (WHERE ${IS_BACK}) AS returned
      FROM unit GROUP BY "issuedOn"
    )
    SELECT TO_CHAR("issuedOn", 'YYYY-MM') AS month, SUM(sent)::int AS sent, SUM(watched)::int AS watched, SUM(returned)::int AS returned
    FROM daily GROUP BY 1 ORDER BY 1`;
}
