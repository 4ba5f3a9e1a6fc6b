import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import type { ClientBase } from 'pg';
import { readMigrations } from '@/lib/db/engine';
import { migrate } from '@/lib/db/migrate';
import { onServer } from '@/lib/db/server';
import { Refusal } from '@/lib/outcome';
import { type Checked, checkBackup } from './check-backup';
import type { FilePlace } from './file-place';
import {
  compareTables,
  firstFilledTable,
  insertRows,
  matchingTables,
  openTables,
  setSequences,
} from './load-tables';
import { type Manifest, migrationProblem } from './rules/manifest';
import { exactly, readAppliedMigrations, type Table } from './tables';
import { broken, readTar, sha256 } from './tar-file';

export type Restored = {
  manifest: Manifest;
  rows: number;
  /** put into the store, and found there already with the same bytes */
  files: { put: number; there: number };
  /** migrations newer than the backup, applied to what was loaded */
  migrated: string[];
  /** messages that wait and leave once the app runs */
  waitingMail: number;
};

/**
 * Fills an empty database and a store of files from a backup. Every hash is compared before anything is written, and every row and
 * file is read back before the one transaction commits; whatever fails, the database stays empty and no file stays behind.
 * The caller has looked at the secret.
 */
export async function restoreBackup(o: {
  file: string;
  databaseUrl: string;
  /** where photos and papers go; null for a backup without them */
  files: FilePlace | null;
  checked?: Checked;
}): Promise<Restored> {
  const { manifest } = o.checked ?? (await checkBackup(o.file));
  const known = (await readMigrations()).migrationDirectories.map(({ path }) => path);
  const problem = migrationProblem(manifest.migrations, known);
  if (problem) throw new Refusal('conflict', problem);
  await onServer(o.databaseUrl, (client) => refuseFilled(client, manifest));
  const there = await filesThere(manifest, o.files);
  await migrate(o.databaseUrl, { only: manifest.migrations });

  const put: string[] = [];
  const waitingMail = await onServer(o.databaseUrl, (client) =>
    exactly(client, 'BEGIN', async () => {
      const tables = await matchingTables(client, manifest);
      const close = await openTables(client, [...tables.values()]);
      await load({ ...o, client, manifest, tables, there, put });
      await setSequences(client, manifest.sequences);
      await close();
      await compareTables(client, manifest);
      return countWaitingMail(client);
    }),
  ).catch(async (error: unknown) => {
    for (const key of put) await o.files?.remove(key).catch(() => {});
    throw error;
  });
  const migrated = await migrate(o.databaseUrl);
  const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
  return { manifest, rows, files: { put: put.length, there: there.size }, migrated, waitingMail };
}

async function refuseFilled(client: ClientBase, manifest: Manifest): Promise<void> {
  const filled = await firstFilledTable(client);
  if (filled !== null) {
    throw new Refusal(
      'conflict',
      `The database is not empty: table ${filled} has rows. A backup is restored into an empty one.`,
    );
  }
  const newer = (await readAppliedMigrations(client)).find((name) => !manifest.migrations.includes(name));
  if (newer === undefined) return;
  throw new Refusal(
    'conflict',
    `The database was prepared by a newer version than the backup (${newer}). Give an empty one.`,
  );
}

/** Files of the backup that the store has with the same bytes; refuses when it has one with others. */
async function filesThere(manifest: Manifest, place: FilePlace | null): Promise<Set<string>> {
  const there = new Set<string>();
  for (const { key, entry } of manifest.files ?? []) {
    if (!place || !(await place.has(key))) continue;
    if (sha256(await place.read(key)) !== entry.sha256)
      throw new Refusal('conflict', `The store has another file under ${key}. Nothing was written.`);
    there.add(key);
  }
  return there;
}

const unzip = promisify(gunzip);

/** Takes every entry a second time; one that changed since it was checked is noticed here. */
async function load(o: {
  file: string;
  client: ClientBase;
  manifest: Manifest;
  tables: ReadonlyMap<string, Table>;
  files: FilePlace | null;
  there: ReadonlySet<string>;
  put: string[];
}): Promise<void> {
  const parts = new Map(
    o.manifest.tables.flatMap(({ name, parts }) =>
      parts.map((part) => [part.name, { ...part, table: name }]),
    ),
  );
  const files = new Map((o.manifest.files ?? []).map(({ key, entry }) => [entry.name, { ...entry, key }]));
  await readTar(o.file, async (name, bytes) => {
    const part = parts.get(name);
    const file = files.get(name);
    const expected = part ?? file;
    if (expected && sha256(bytes) !== expected.sha256) throw broken(`${name} is not as it was`);
    const table = part && o.tables.get(part.table);
    if (table) await insertRows(o.client, table, (await unzip(bytes)).toString('utf8').trimEnd().split('\n'));
    if (!file || !o.files || o.there.has(file.key)) return;
    o.put.push(file.key);
    await o.files.put(file.key, bytes);
    if (sha256(await o.files.read(file.key)) !== file.sha256)
      throw new Refusal('conflict', `The store did not keep ${file.key} as it was.`);
  });
}

async function countWaitingMail(client: ClientBase): Promise<number> {
  const { rows } = await client.query<{ count: number }>(
    `SELECT count(*)::int AS count FROM public.mail WHERE state IN ('queued', 'sending')`,
  );
  return rows[0]?.count ?? 0;
}
