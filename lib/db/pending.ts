import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { Client } from 'pg';
import { config } from '@/lib/config';

let isComplete = false;

/**
 * How the database stands towards this program: not there within two seconds, without a migration that this program
 * needs, or fine. A migration more than ours is fine: during an update older and newer instances run side by side.
 * Asks on a connection of its own, so a full pool is no excuse.
 */
export async function databaseStanding(): Promise<'not reachable' | 'migrations pending' | 'fine'> {
  const client = new Client({
    connectionString: config.databaseUrl,
    connectionTimeoutMillis: 2000,
    query_timeout: 2000,
  });
  client.on('error', () => {});
  try {
    await client.connect();
    // Migrations are never taken back, so one look that found them all is enough.
    isComplete ||= await hasEveryMigration(client);
    if (isComplete) await client.query('select 1');
    return isComplete ? 'fine' : 'migrations pending';
  } catch {
    return 'not reachable';
  } finally {
    await client.end().catch(() => {});
  }
}

async function hasEveryMigration(client: Client): Promise<boolean> {
  const { rows: tables } = await client.query<{ name: string | null }>(
    `select to_regclass('public._prisma_migrations')::text as name`,
  );
  if (!tables[0]?.name) return false;
  const { rows } = await client.query<{ name: string }>(
    'select migration_name as name from _prisma_migrations where finished_at is not null and rolled_back_at is null',
  );
  const applied = new Set(rows.map(({ name }) => name));
  const entries = await readdir(path.resolve('prisma/migrations'), { withFileTypes: true });
  return entries.every((entry) => !entry.isDirectory() || applied.has(entry.name));
}
