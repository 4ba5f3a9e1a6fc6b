import { db } from '@/lib/db/client';
import { type CoverClock, unitRows } from './cover-sql';

/** Days after dispatch that every unit of a month or of a sheet is watched for, so that old and young ones compare. */
export const WATCHED_DAYS = 90;

/** Units by the month they were sent back in; only those whose watch of ninety days is over count. */
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
  return db.$queryRaw<MonthCount[]>`
    WITH ${unitRows(clock)}
    SELECT TO_CHAR("issuedOn", 'YYYY-MM') AS month, COUNT(*)::int AS sent,
      (COUNT(*) FILTER (WHERE "startsOn" + ${WATCHED_DAYS}::int <= ${clock.today}::date))::int AS watched,
      (COUNT(*) FILTER (WHERE "startsOn" + ${WATCHED_DAYS}::int <= ${clock.today}::date
        AND "isReturned" AND days <= ${WATCHED_DAYS}::int))::int AS returned
    FROM unit
    WHERE "issuedOn" >= DATE_TRUNC('month', ${clock.today}::date) - MAKE_INTERVAL(months => ${months - 1}::int)
    GROUP BY 1 ORDER BY 1`;
}
