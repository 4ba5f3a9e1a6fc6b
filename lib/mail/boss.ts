import { Pool } from 'pg';
import PgBoss from 'pg-boss';
import { config } from '@/lib/config';
import type { Tx } from '@/lib/db/transaction';

/** The queue's name in pg-boss; its jobs carry `{ mailId }` and have the mail's id as their own. */
export const mailQueue = 'mail';

/**
 * Ten tries after the first. pg-boss waits between half and all of 30 s doubled at each try, so the last one comes
 * between 8 and 17 hours after the first. A try that has not ended after two minutes is taken for dead.
 */
const retries = { retryLimit: 10, retryDelay: 30, retryBackoff: true, expireInSeconds: 120 };
const weekInMinutes = 7 * 24 * 60;

type Statement = { rows: Record<string, unknown>[] };
export type Queue = { boss: PgBoss; close(): Promise<void> };
export type QueueOptions = { connectionString?: string; pollSeconds?: number; superviseSeconds?: number };

/**
 * Makes pg-boss's own tables and the mail queue, or gives the queue the retries of this version. Run once at start, after
 * the migrations and before anything is queued; running it again changes nothing.
 */
export async function prepareQueue(options: { connectionString?: string } = {}): Promise<void> {
  const queue = openQueue(options, { migrate: true, supervise: false });
  try {
    await queue.boss.start();
    const settings = { name: mailQueue, ...retries, retentionMinutes: weekInMinutes };
    await queue.boss.createQueue(mailQueue, settings);
    await queue.boss.updateQueue(mailQueue, settings);
  } finally {
    await queue.boss.stop({ graceful: false });
    await queue.close();
  }
}

/** A pg-boss that only sends, with the connection each call hands to it; it opens none and is never started. */
export function sender(): PgBoss {
  idle ??= new PgBoss({
    db: {
      executeSql: () => Promise.reject(new Error('The sending pg-boss works only inside a transaction')),
    },
    ...commonSettings,
  });
  return idle;
}
let idle: PgBoss | undefined;

/** The open transaction as pg-boss wants its database: what it writes commits or rolls back with the rest. */
export function within(tx: Tx): PgBoss.Db {
  return {
    async executeSql(text, values) {
      const rows = await tx.$queryRawUnsafe<Record<string, unknown>[]>(text, ...values);
      return { rows };
    },
  };
}

// The launcher makes the tables once (prepareQueue); no process makes them by the way, and none runs schedules.
const commonSettings = { migrate: false, schedule: false };

/**
 * Opens pg-boss on connections of its own. Its many-statement scripts begin a transaction by themselves; when one fails
 * the connection is dropped, because the embedded database serves nobody else while a transaction stays open.
 */
export function openQueue(
  options: QueueOptions = {},
  more: { migrate?: boolean; supervise?: boolean } = {},
): Queue {
  const connectionString = options.connectionString ?? config.databaseUrl;
  if (!connectionString)
    throw new Error('No database for the mail queue: set DATABASE_URL or run through `npm start`');
  const pool = new Pool({ connectionString, max: 2 });
  // Connections may be cut; the pool opens new ones, and a statement under way fails by itself. Without listeners the process
  // would end: the pool's own hears only of idle connections (seen with a killed server).
  pool.on('error', () => {});
  pool.on('connect', (client) => client.on('error', () => {}));
  const running = new Set<Promise<Statement>>();
  const database: PgBoss.Db = {
    executeSql(text, values) {
      const statement = run(pool, text, values);
      running.add(statement);
      return statement.finally(() => running.delete(statement));
    },
  };
  const boss = new PgBoss({
    db: database,
    ...commonSettings,
    ...more,
    maintenanceIntervalSeconds: options.superviseSeconds ?? 30,
    pollingIntervalSeconds: options.pollSeconds ?? 2,
  });
  return {
    boss,
    async close() {
      // pg-boss does not wait for the statement that marks a job as done.
      while (running.size > 0) await Promise.allSettled(running);
      await pool.end();
    },
  };
}

async function run(pool: Pool, text: string, values: unknown[]): Promise<Statement> {
  const client = await pool.connect();
  try {
    const result = await client.query(text, values);
    client.release();
    return { rows: Array.isArray(result) ? [] : result.rows };
  } catch (error) {
    client.release(true);
    throw error;
  }
}
