import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { type ClientBase, escapeIdentifier as id } from 'pg';
import { onServer } from '@/lib/db/server';
import packageFile from '@/package.json';
import type { FilePlace } from './file-place';
import { FORMAT, type Manifest } from './rules/manifest';
import { secretMark } from './secret';
import {
  describeTables,
  exactly,
  readAppliedMigrations,
  readRows,
  readSequences,
  type Table,
} from './tables';
import { type TarWriter, writeTar } from './tar-file';

export const SECRET_ENTRY = 'secret';

export type BackupMade = {
  size: number;
  tables: number;
  rows: number;
  files: number;
  missing: string[];
  /** how long the snapshot was open: on the embedded database nobody else was served meanwhile */
  heldMs: number;
};

/**
 * Writes everything the workshop keeps into one file: its tables as they stand at one moment, then the photos and papers that
 * their rows name, then the manifest. The app may go on writing. A file that is not whole never has the file's name.
 */
export async function makeBackup(o: {
  file: string;
  databaseUrl: string;
  secret: string;
  hasSecret: boolean;
  /** where photos and papers are; null leaves them out */
  files: FilePlace | null;
  now: Date;
}): Promise<BackupMade> {
  const tar = await writeTar(o.file, o.now);
  try {
    const mark = secretMark(o.secret);
    if (o.hasSecret) await tar.add(SECRET_ENTRY, Buffer.from(`${o.secret}\n`));
    const { keys, heldMs, ...fromTables } = await onServer(o.databaseUrl, (client) => addTables(client, tar));
    const { files, missing } = o.files ? await addFiles(keys, o.files, tar) : { missing: [] };
    const manifest: Manifest = {
      format: FORMAT,
      madeAt: o.now.toISOString(),
      program: packageFile.version,
      ...fromTables,
      ...(files && { files }),
      missing,
      secret: { mark, isInside: o.hasSecret },
    };
    const { size } = await tar.finish(manifest);
    const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
    return { size, tables: manifest.tables.length, rows, files: files?.length ?? 0, missing, heldMs };
  } finally {
    await tar.abandon();
  }
}

type FromTables = Pick<Manifest, 'migrations' | 'tables' | 'sequences'> & { keys: string[]; heldMs: number };

/** One snapshot for all tables: what is committed while they are read is in none of them. */
async function addTables(client: ClientBase, tar: TarWriter): Promise<FromTables> {
  const began = performance.now();
  return exactly(client, 'BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY', async () => {
    const migrations = await readAppliedMigrations(client);
    const described = await describeTables(client);
    const keys: string[] = [];
    const tables: Manifest['tables'] = [];
    for (const table of described) {
      tables.push(await addTable(client, table, tar));
      keys.push(...(await fileKeys(client, table)));
    }
    const sequences = await readSequences(client);
    return { migrations, tables, sequences, keys, heldMs: performance.now() - began };
  });
}

const zip = promisify(gzip);

/** While one page is pressed and written the database reads the next, so that the snapshot is open as short as can be. */
async function addTable(
  client: ClientBase,
  table: Table,
  tar: TarWriter,
): Promise<Manifest['tables'][number]> {
  const digest = createHash('sha256');
  const parts: Manifest['tables'][number]['parts'] = [];
  let rows = 0;
  let page = 0;
  let writing = Promise.resolve();
  for await (const lines of readRows(client, table)) {
    await writing;
    rows += lines.length;
    page += 1;
    const text = Buffer.from(`${lines.join('\n')}\n`);
    digest.update(text);
    const name = `tables/${table.name}/${String(page).padStart(5, '0')}.ndjson.gz`;
    writing = zip(text, { level: 1 }).then(async (bytes) => void parts.push(await tar.add(name, bytes)));
    // Looked at in the next round; until then it must not count as unhandled.
    writing.catch(() => {});
  }
  await writing;
  const columns = table.columns.map(({ name }) => name);
  return { name: table.name, columns, rows, sha256: digest.digest('hex'), parts };
}

/** Columns that hold the key of a file, in whichever table: fileKey, thumbKey, or another that ends so. */
const OF_FILES = /^(file|thumb)Key$|(File|Thumb)Key$/;

async function fileKeys(client: ClientBase, table: Table): Promise<string[]> {
  const keys: string[] = [];
  for (const { name } of table.columns.filter((column) => OF_FILES.test(column.name))) {
    const { rows } = await client.query<{ key: string }>(
      `SELECT ${id(name)} AS key FROM public.${id(table.name)} WHERE ${id(name)} IS NOT NULL ORDER BY ${id(name)} COLLATE "C"`,
    );
    keys.push(...rows.map(({ key }) => key));
  }
  return keys;
}

/** A file that is gone from the store does not keep the rest from being saved; it is named. */
async function addFiles(keys: readonly string[], place: FilePlace, tar: TarWriter) {
  const files: NonNullable<Manifest['files']> = [];
  const missing: string[] = [];
  for (const key of keys) {
    if (await place.has(key))
      files.push({ key, entry: await tar.add(`files/${key}`, await place.read(key)) });
    else missing.push(key);
  }
  return { files, missing };
}
