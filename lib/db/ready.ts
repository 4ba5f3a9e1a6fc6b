import { Client } from 'pg';
import { config } from '@/lib/config';

/** True when the database answers within two seconds. Asks on a connection of its own, so a full pool is no excuse. */
export async function isDatabaseReachable(): Promise<boolean> {
  const client = new Client({
    connectionString: config.databaseUrl,
    connectionTimeoutMillis: 2000,
    query_timeout: 2000,
  });
  client.on('error', () => {});
  try {
    await client.connect();
    await client.query('select 1');
    return true;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => {});
  }
}
