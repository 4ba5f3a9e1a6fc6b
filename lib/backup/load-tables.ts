import { createHash } from 'node:crypto';
import { type ClientBase, escapeIdentifier as id } from 'pg';
import { Refusal } from '@/lib/outcome';
import type { Manifest } from './rules/manifest';
import { describeTables, readRows, type Table } from './tables';

/**
 * Prepares an empty database's tables for rows in any order, inside one transaction, and returns what puts everything back.
 *
 * References between tables are taken off and added again, which makes the database look at every row; a circle of references then
 * needs no order, and an owner of the tables who is no superuser may do it. Triggers rest, so that rows come in exactly as they were.
 */
export async function openTables(client: ClientBase, tables: readonly Table[]): Promise<() => Promise<void>> {
  const { rows: references } = await client.query<{ table: string; name: string; definition: string }>(
    `SELECT conrelid::regclass::text AS "table", conname AS "name", pg_get_constraintdef(oid) AS "definition"
      FROM pg_constraint WHERE contype = 'f' AND connamespace = 'public'::regnamespace ORDER BY 1, 2`,
  );
  for (const { table, name } of references) {
    await client.query(`ALTER TABLE ${table} DROP CONSTRAINT ${id(name)}`);
  }
  for (const { name } of tables) await client.query(`ALTER TABLE public.${id(name)} DISABLE TRIGGER USER`);
  return async () => {
    for (const { name } of tables) await client.query(`ALTER TABLE public.${id(name)} ENABLE TRIGGER USER`);
    for (const { table, name, definition } of references) {
      await client.query(`ALTER TABLE ${table} ADD CONSTRAINT ${id(name)} ${definition}`);
    }
  };
}

/** Writes a page of rows as `readRows` gave them: the database itself turns each text back into its value. */
export async function insertRows(client: ClientBase, table: Table, lines: readonly string[]): Promise<void> {
  const columns = table.columns.map(({ name }) => id(name)).join(', ');
  const values = table.columns.map(({ type }, place) => `(line->>${place})::${type}`).join(', ');
  await client.query(
    `INSERT INTO public.${id(table.name)} (${columns}) OVERRIDING SYSTEM VALUE
      SELECT ${values} FROM json_array_elements($1::json) AS given (line)`,
    [`[${lines.join(',')}]`],
  );
}

export async function setSequences(client: ClientBase, sequences: Manifest['sequences']): Promise<void> {
  for (const { name, last, isCalled } of sequences) {
    await client.query('SELECT setval($1::regclass, $2::bigint, $3)', [`public.${id(name)}`, last, isCalled]);
  }
}

/** The tables of the database as the backup has them; refuses when they differ in a table or a column. */
export async function matchingTables(client: ClientBase, manifest: Manifest): Promise<Map<string, Table>> {
  const tables = new Map((await describeTables(client)).map((table) => [table.name, table]));
  for (const { name, columns } of manifest.tables) {
    const here = tables.get(name)?.columns.map((column) => column.name);
    if (!here) throw new Refusal('conflict', `The database has no table ${name} as in the backup.`);
    if (here.join() !== columns.join())
      throw new Refusal('conflict', `Table ${name} has other columns than in the backup.`);
  }
  const extra = [...tables.keys()].find((name) => !manifest.tables.some((table) => table.name === name));
  if (extra !== undefined) throw new Refusal('conflict', `The backup knows no table ${extra}.`);
  return tables;
}

/** Reads every row back and compares each table with the backup by number and hash. */
export async function compareTables(client: ClientBase, manifest: Manifest): Promise<void> {
  const tables = await matchingTables(client, manifest);
  for (const { name, rows, sha256 } of manifest.tables) {
    const table = tables.get(name);
    if (!table) continue;
    const digest = createHash('sha256');
    let count = 0;
    for await (const lines of readRows(client, table)) {
      digest.update(`${lines.join('\n')}\n`);
      count += lines.length;
    }
    if (count !== rows || digest.digest('hex') !== sha256) {
      throw new Refusal('conflict', `Table ${name} did not come out as it went in; nothing was kept.`);
    }
  }
}

/** The first table that has a row, or null: a backup is loaded into an empty database only. */
export async function firstFilledTable(client: ClientBase): Promise<string | null> {
  for (const { name } of await describeTables(client)) {
    const { rows } = await client.query<{ filled: boolean }>(
      `SELECT EXISTS (SELECT FROM public.${id(name)}) AS filled`,
    );
    if (rows[0]?.filled) return name;
  }
  return null;
}
