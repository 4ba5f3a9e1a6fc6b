import { createHash } from 'node:crypto';
import type { MigrationList } from '@prisma/schema-engine-wasm';
import { Client } from 'pg';
import { noFilters, readMigrations, withSchemaEngine } from './engine';

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
    if (await isUpToDate(client, migrationsList)) return [];
    const { appliedMigrationNames } = await withSchemaEngine(connectionString, (engine) =>
      engine.applyMigrations({ migrationsList, filters: noFilters }),
    );
    return appliedMigrationNames;
  } finally {
    await client.query('select pg_advisory_unlock($1)', [advisoryKey]).catch(() => {});
    await client.end();
  }
}

type AppliedRow = { migration_name: string; checksum: string; finished_at: Date | null };

/** The same comparison as the engine's without loading it, which costs the better part of a second. */
async function isUpToDate(client: Client, { migrationDirectories }: MigrationList): Promise<boolean> {
  const { rows: tables } = await client.query<{ name: string | null }>(
    `select to_regclass('public._prisma_migrations')::text as name`,
  );
  if (!tables[0]?.name) return false;
  const { rows } = await client.query<AppliedRow>(
    'select migration_name, checksum, finished_at from _prisma_migrations where rolled_back_at is null',
  );
  const applied = new Map(rows.map((row) => [row.migration_name, row]));
  if (applied.size !== migrationDirectories.length) return false;
  return migrationDirectories.every(({ path, migrationFile: { content } }) => {
    const row = applied.get(path);
    const checksum = createHash('sha256').update(content.value).digest('hex');
    return row !== undefined && row.finished_at !== null && row.checksum === checksum;
  });
}
