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
  changed: string[];
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
    const { named, heldMs, ...fromTables } = await onServer(o.databaseUrl, (client) =>
      addTables(client, tar),
    );
    const { files, missing, changed } = o.files
      ? await addFiles(named, o.files, tar)
      : { missing: [], changed: [] };
    const manifest: Manifest = {
      format: FORMAT,
      madeAt: o.now.toISOString(),
      program: packageFile.version,
      ...fromTables,
      ...(files && { files }),
      missing,
      changed,
      secret: { mark, isInside: o.hasSecret },
    };
    const { size } = await tar.finish(manifest);
    const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
    return {
      size,
      tables: manifest.tables.length,
      rows,
      files: files?.length ?? 0,
      missing,
      changed,
      heldMs,
    };
  } finally {
    await tar.abandon();
  }
}

type FromTables = Pick<Manifest, 'migrations' | 'tables' | 'sequences'> & { named: Named[]; heldMs: number };

/** One snapshot for all tables: what is committed while they are read is in none of them. */
async function addTables(client: ClientBase, tar: TarWriter): Promise<FromTables> {
  const began = performance.now();
  return exactly(client, 'BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY', async () => {
    const migrations = await readAppliedMigrations(client);
    const described = await describeTables(client);
    const named: Named[] = [];
    const tables: Manifest['tables'] = [];
    for (const table of described) {
      tables.push(await addTable(client, table, tar));
      named.push(...(await namedFiles(client, table)));
    }
    const sequences = await readSequences(client);
    return { migrations, tables, sequences, named, heldMs: performance.now() - began };
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

/** A file that a row names, with the hash that the row has of it, where it has one. */
type Named = { key: string; sha256: string | null };

async function namedFiles(client: ClientBase, table: Table): Promise<Named[]> {
  const named: Named[] = [];
  for (const { name } of table.columns.filter((column) => OF_FILES.test(column.name))) {
    // The hash beside them is that of the file itself, not of its small copy (prisma/schema).
    const hasHash = name === 'fileKey' && table.columns.some((column) => column.name === 'sha256');
    const { rows } = await client.query<Named>(
      `SELECT ${id(name)} AS key, ${hasHash ? 'sha256' : 'NULL'} AS sha256 FROM public.${id(table.name)}
        WHERE ${id(name)} IS NOT NULL ORDER BY ${id(name)} COLLATE "C"`,
    );
    named.push(...rows);
  }
  return named;
}

/** A file that is gone from the store, or is not as its row says, does not keep the rest from being saved; it is named. */
async function addFiles(named: readonly Named[], place: FilePlace, tar: TarWriter) {
  const files: NonNullable<Manifest['files']> = [];
  const missing: string[] = [];
  const changed: string[] = [];
  for (const { key, sha256 } of new Map(named.map((each) => [each.key, each])).values()) {
    if (!(await place.has(key))) {
      missing.push(key);
      continue;
    }
    const entry = await tar.add(`files/${key}`, await place.read(key));
    files.push({ key, entry });
    if (sha256 !== null && sha256 !== entry.sha256) changed.push(key);
  }
  return { files, missing, changed };
}
