import { embeddedUrl } from '@/lib/db/embedded-place';
import { onServer } from '@/lib/db/server';

/** A mark for all the rows of each table; two that are alike hold the same rows. */
export type Kept = ReadonlyMap<string, string>;

/** Where an app that runs keeps its rows: a server, or the embedded database of a data folder. */
export type Where = { databaseUrl: string | undefined; dataDir: string };

// Counting tries is meant to happen, reading a page again marks it as read, and a session as used.
const moveByThemselves = ['_prisma_migrations', 'attempt', 'auth_session', 'seen_by'];

/** Everything the workshop keeps, but for what moves by itself; of messages only which there are, since they leave on their own. */
export function everythingKept(where: Where): Promise<Kept> {
  return read(
    where,
    `
    select tablename as "table", case tablename when 'mail' then '"id"::text' else 'x::text' end as "row", '' as "where"
    from pg_tables where schemaname = 'public' and tablename <> all ($1)`,
  );
}

/** What is kept of one job or quote, by the number on its docket. */
export function keptOf(where: Where, number: string): Promise<Kept> {
  const [owner, column] = number.startsWith('Q') ? ['quote', 'quoteId'] : ['job', 'jobId'];
  return read(
    where,
    `
    select table_name as "table", case table_name when 'mail' then '"id"::text' else 'x::text' end as "row",
      format(' where %I = (select "id" from %I where "number" = %L)', column_name, '${owner}', $2::text) as "where"
    from information_schema.columns
    where table_schema = 'public' and column_name = '${column}' and table_name <> all ($1)
    union all select '${owner}', 'x::text', format(' where "number" = %L', $2::text)`,
    number,
  );
}

/** The tables in which rows came, went or changed. */
export function changedBetween(before: Kept, after: Kept): string[] {
  const names = new Set([...before.keys(), ...after.keys()]);
  return [...names].filter((name) => before.get(name) !== after.get(name)).sort();
}

async function read({ databaseUrl, dataDir }: Where, tables: string, ...more: string[]): Promise<Kept> {
  return onServer(databaseUrl || embeddedUrl(dataDir), async (client) => {
    const parts = await client.query<{ table: string; row: string; where: string }>(tables, [
      moveByThemselves,
      ...more,
    ]);
    const marks = parts.rows.map(
      ({ table, row, where }) =>
        `select '${table}' as "table", md5(coalesce(string_agg(${row}, '|' order by ${row}), '')) as "mark" from "${table}" x${where}`,
    );
    const { rows } = await client.query<{ table: string; mark: string }>(marks.join(' union all '));
    return new Map(rows.map(({ table, mark }) => [table, mark]));
  });
}
