import { type ClientBase, escapeIdentifier as id } from 'pg';

export type Column = { name: string; type: string };
/** `order` is the key as SQL, text by its bytes, so that every database and every locale gives the same order. */
export type Table = { name: string; columns: Column[]; order: string };

/** Written by the migrations themselves, not by the workshop. */
const OF_MIGRATIONS = '_prisma_migrations';
const PAGE_ROWS = 2000;

/** Settings under which the text of a value is exact and the same on every PostgreSQL; they end with the transaction. */
const EXACT = `
  SET LOCAL search_path = public;
  SET LOCAL timezone = 'UTC';
  SET LOCAL datestyle = 'ISO, YMD';
  SET LOCAL intervalstyle = 'postgres';
  SET LOCAL extra_float_digits = 1;
  SET LOCAL bytea_output = 'hex'`;

/** Runs `work` in one transaction in which values are written and read exactly. */
export async function exactly<T>(client: ClientBase, begin: string, work: () => Promise<T>): Promise<T> {
  await client.query(begin);
  try {
    await client.query(EXACT);
    const result = await work();
    await client.query('COMMIT');
    return result;
  } catch (error) {
    await client.query('ROLLBACK').catch(() => {});
    throw error;
  }
}

/** The workshop's tables, by name. What a mail queue keeps is not among them: lib/mail/recover makes it anew. */
export async function describeTables(client: ClientBase): Promise<Table[]> {
  const { rows } = await client.query<Described>(
    `SELECT c.relname AS "table", a.attname AS "column", format_type(a.atttypid, a.atttypmod) AS "type",
        a.attcollation <> 0 AS "isText", array_position(i.indkey::int2[], a.attnum) AS "place"
      FROM pg_class c
        JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = ''
        LEFT JOIN pg_index i ON i.indrelid = c.oid AND i.indisprimary
      WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace AND c.relname <> $1
      ORDER BY c.relname COLLATE "C", a.attnum`,
    [OF_MIGRATIONS],
  );
  const tables = new Map<string, Described[]>();
  for (const row of rows) tables.set(row.table, [...(tables.get(row.table) ?? []), row]);
  return [...tables].map(([name, columns]) => ({
    name,
    columns: columns.map(({ column, type }) => ({ name: column, type })),
    order: orderOf(columns),
  }));
}

type Described = { table: string; column: string; type: string; isText: boolean; place: number | null };

function orderOf(columns: readonly Described[]): string {
  const key = columns.filter(({ place }) => place !== null).sort((a, b) => (a.place ?? 0) - (b.place ?? 0));
  // Rows of a table without a key are told apart by all they hold.
  if (key.length === 0) return columns.map(({ column }) => `${id(column)}::text COLLATE "C"`).join(', ');
  return key.map(({ column, isText }) => (isText ? `${id(column)} COLLATE "C"` : id(column))).join(', ');
}

/**
 * The rows of a table, page by page, each row a line of JSON: its columns as text in their order, null where there is none.
 * Works inside `exactly`; the cursor sorts once, however many pages there are.
 */
export async function* readRows(client: ClientBase, table: Table): AsyncGenerator<string[]> {
  const values = table.columns.map(({ name }) => `${id(name)}::text`).join(', ');
  await client.query(
    `DECLARE rows_of_table NO SCROLL CURSOR FOR
      SELECT to_json(ARRAY[${values}]::text[])::text AS line FROM public.${id(table.name)} ORDER BY ${table.order}`,
  );
  for (;;) {
    const { rows } = await client.query<{ line: string }>(`FETCH ${PAGE_ROWS} FROM rows_of_table`);
    if (rows.length > 0) yield rows.map(({ line }) => line);
    if (rows.length < PAGE_ROWS) break;
  }
  await client.query('CLOSE rows_of_table');
}

export type Sequence = { name: string; last: string; isCalled: boolean };

export async function readSequences(client: ClientBase): Promise<Sequence[]> {
  const { rows: names } = await client.query<{ name: string }>(
    `SELECT relname AS name FROM pg_class WHERE relkind = 'S' AND relnamespace = 'public'::regnamespace ORDER BY relname COLLATE "C"`,
  );
  const sequences: Sequence[] = [];
  for (const { name } of names) {
    const { rows } = await client.query<Omit<Sequence, 'name'>>(
      `SELECT last_value::text AS last, is_called AS "isCalled" FROM public.${id(name)}`,
    );
    for (const row of rows) sequences.push({ name, ...row });
  }
  return sequences;
}

/** Names of the migrations that the database has, oldest first; none where there is no such table yet. */
export async function readAppliedMigrations(client: ClientBase): Promise<string[]> {
  const { rows: tables } = await client.query<{ name: string | null }>(
    `SELECT to_regclass('public.${OF_MIGRATIONS}')::text AS name`,
  );
  if (!tables[0]?.name) return [];
  const { rows } = await client.query<{ name: string }>(
    `SELECT migration_name AS name FROM public.${OF_MIGRATIONS}
      WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL ORDER BY migration_name COLLATE "C"`,
  );
  return rows.map(({ name }) => name);
}
