import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import type { Stage } from './rules/stages';
import { jobsSought } from './stored-sought';

export type FoundJobs = {
  /** those of one page, newest booking first; what is past the last page is the last */
  ids: string[];
  /** how many of all that were found stand at each stage, whatever stage is chosen */
  counts: { stage: string; count: number }[];
};

type Asked = { stage: Stage | null; q: string; page: number; size: number };

/** Jobs that a text leads to (`stored-sought.ts`), in one statement. */
export async function findByText(o: Asked): Promise<FoundJobs> {
  const ofStage = o.stage === null ? Prisma.sql`TRUE` : Prisma.sql`"stage" = ${o.stage}`;
  const [row] = await db.$queryRaw<{ ids: string[] | null; counts: Record<string, number> | null }[]>`
    WITH found AS MATERIALIZED (
      SELECT "id", "stage", "bookedAt" FROM "job" WHERE "id" IN (${jobsSought(o.q)})
    ),
    shown AS (SELECT "id", "bookedAt" FROM found WHERE ${ofStage})
    SELECT
      (SELECT jsonb_object_agg("stage", n) FROM (SELECT "stage", count(*) AS n FROM found GROUP BY "stage") s) AS counts,
      (SELECT array_agg("id") FROM (
        SELECT "id" FROM shown ORDER BY "bookedAt" DESC, "id" DESC LIMIT ${o.size} OFFSET (
          SELECT GREATEST(0, LEAST(${o.page}::int, (COUNT(*) - 1) / ${o.size}::int + 1) - 1) * ${o.size}::int FROM shown)
      ) p) AS ids`;
  return {
    ids: row?.ids ?? [],
    counts: Object.entries(row?.counts ?? {}).map(([stage, count]) => ({ stage, count })),
  };
}
