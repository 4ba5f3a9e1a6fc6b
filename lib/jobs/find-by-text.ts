import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import { plainInPattern } from '@/lib/db/like';
import { soughtFrom } from './rules/sought';
import type { Stage } from './rules/stages';

export type FoundJobs = {
  /** those of one page, newest booking first; what is past the last page is the last */
  ids: string[];
  /** how many of all that were found stand at each stage, whatever stage is chosen */
  counts: { stage: string; count: number }[];
};

type Asked = { stage: Stage | null; q: string; page: number; size: number };

/**
 * Jobs whose number, serial, name or e-mail holds a text. Each place is asked for by itself, since one condition over two
 * tables cannot use the indexes of either; `prisma/migrations/…_find_parts_of_serials` has the expressions they are on.
 */
export async function findByText(o: Asked): Promise<FoundJobs> {
  const ofStage = o.stage === null ? Prisma.sql`TRUE` : Prisma.sql`"stage" = ${o.stage}`;
  const [row] = await db.$queryRaw<{ ids: string[] | null; counts: Record<string, number> | null }[]>`
    WITH found AS MATERIALIZED (
      SELECT "id", "stage", "bookedAt" FROM "job" WHERE "id" IN (${placesOf(o.q)})
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

/** A query for the ids of what is meant, joined place by place. */
function placesOf(q: string): Prisma.Sql {
  const sought = soughtFrom(q);
  if (sought.kind === 'number' && sought.of === 'J')
    return Prisma.sql`SELECT "id" FROM "job" WHERE "number" = ${sought.number}`;
  const text = `%${plainInPattern(q.trim())}%`;
  const places = [
    Prisma.sql`SELECT j."id" FROM "customer" c JOIN "job" j ON j."customerId" = c."id"
      WHERE lower(c."name") || ' ' || lower(c."email") LIKE lower(${text}) AND (c."name" ILIKE ${text} OR c."email" ILIKE ${text})`,
  ];
  const key = sought.kind === 'text' ? sought.key : '';
  if (key !== '') {
    places.push(inSerialOrNumber(key));
    // Our numbers hold no O, I or L (lib/numbers/job-number.ts).
    const asNumber = key.replaceAll('O', '0').replace(/[IL]/g, '1');
    if (asNumber !== key)
      places.push(Prisma.sql`${inSerialOrNumber(asNumber)} AND "number" LIKE ${`%${asNumber}%`}`);
  }
  return Prisma.join(places, ' UNION ');
}

function inSerialOrNumber(key: string): Prisma.Sql {
  return Prisma.sql`SELECT "id" FROM "job" WHERE "number" || ' ' || "serialKey" LIKE ${`%${key}%`}`;
}
