import { createHash, randomUUID } from 'node:crypto';
import type { MigrationList } from '@prisma/schema-engine-wasm';
import { Client } from 'pg';
import { readMigrations } from './engine';

// Any fixed number of our own; Prisma's engine takes another one for itself.
const advisoryKey = 7_265_061_001;

/**
 * Brings the database to the newest migration and returns the names of those it applied, oldest first. Several starts
 * on one server may call it at once: the advisory lock makes them queue, and the later ones find nothing to do. With `only` it
 * brings an empty database to the migrations of these names and no further, as they stood when a backup was made.
 */
export async function migrate(
  connectionString: string,
  options: { only?: readonly string[] } = {},
): Promise<string[]> {
  const client = new Client({ connectionString });
  await client.connect();
  try {
    await client.query('select pg_advisory_lock($1)', [advisoryKey]);
    const migrationsList = await readMigrations();
    const { only } = options;
    if (only) {
      const { migrationDirectories: all } = migrationsList;
      migrationsList.migrationDirectories = all.filter(({ path }) => only.includes(path));
    }
    await client.query(recordTable);
    const applied = await appliedNames(client);
    const missing = migrationsList.migrationDirectories.filter(({ path }) => !applied.has(path));
    for (const migration of missing) await apply(client, migration);
    return missing.map(({ path }) => path);
  } finally {
    await client.query('select pg_advisory_unlock($1)', [advisoryKey]).catch(() => {});
    await client.end();
  }
}

type Migration = MigrationList['migrationDirectories'][number];

/**
 * One migration and its record in one transaction, so that what fails or is killed half way leaves nothing of either and
 * the next start tries again. Prisma's engine records the beginning before it applies the script, and refuses every later
 * start when the end is missing (its error P3009): a power cut at the wrong moment would need somebody who knows SQL.
 */
async function apply(client: Client, { path, migrationFile }: Migration): Promise<void> {
  const script = migrationFile.content.value;
  const record = [randomUUID(), createHash('sha256').update(script).digest('hex'), path];
  try {
    await client.query('begin');
    await client.query(script);
    await client.query(
      `insert into _prisma_migrations (id, checksum, migration_name, finished_at, applied_steps_count)
       values ($1, $2, $3, now(), 1)`,
      record,
    );
    await client.query('commit');
  } catch (error) {
    await client.query('rollback').catch(() => {});
    const reason = error instanceof Error ? error.message : String(error);
    throw new Error(`The migration ${path} failed, and nothing of it was kept: ${reason}`, { cause: error });
  }
}

/** A record without an end is of an engine that was killed while it applied; its script ran as a whole or not at all. */
async function appliedNames(client: Client): Promise<Set<string>> {
  const { rows } = await client.query<{ name: string }>(
    `select migration_name as name from _prisma_migrations
     where finished_at is not null and rolled_back_at is null`,
  );
  return new Set(rows.map(({ name }) => name));
}

// As Prisma's engine makes it, so that its command line can be used on the same database.
const recordTable = `create table if not exists _prisma_migrations (
  id varchar(36) primary key not null,
  checksum varchar(64) not null,
  finished_at timestamptz,
  migration_name varchar(255) not null,
  logs text,
  rolled_back_at timestamptz,
  started_at timestamptz not null default now(),
  applied_steps_count integer not null default 0
)`;
