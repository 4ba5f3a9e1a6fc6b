import { PrismaPg } from '@prisma/adapter-pg';
import { Pool } from 'pg';
import { config } from '@/lib/config';
import { PrismaClient } from './generated/client';
import { isInsideTransaction } from './inside';

export type Db = PrismaClient;

/**
 * The database outside a transaction, connected on first use. Inside `transaction` it throws: the embedded database
 * serves one session, so a query beside the open transaction would wait for it until both time out.
 */
export const db: Db = new Proxy(Object.create(null), {
  get(_target, key) {
    if (isInsideTransaction()) {
      throw new Error(
        `db.${String(key)} was used inside a transaction: use the tx that transaction() hands over`,
      );
    }
    const client = connect();
    const value: unknown = Reflect.get(client, key, client);
    return typeof value === 'function' ? value.bind(client) : value;
  },
  has: (_target, key) => Reflect.has(connect(), key),
});

/** The client itself, for lib/db/transaction and for shutting down. */
export function connect(): Db {
  if (!shared.client) {
    shared.pool = new Pool(poolSettings(config.databaseUrl));
    shared.client = new PrismaClient({ adapter: new PrismaPg(shared.pool, { disposeExternalPool: true }) });
  }
  return shared.client;
}

/** How many connections of the pool are busy and idle, and how many callers wait for one. */
export function poolCounts(): { busy: number; idle: number; waiting: number } {
  const { totalCount = 0, idleCount = 0, waitingCount = 0 } = shared.pool ?? {};
  return { busy: totalCount - idleCount, idle: idleCount, waiting: waitingCount };
}

/** Closes the connections; the next use opens new ones. */
export async function disconnect(): Promise<void> {
  const { client } = shared;
  shared.client = undefined;
  shared.pool = undefined;
  await client?.$disconnect();
}

/**
 * adapter-pg 7.10 drops the offset of a timestamptz instead of applying it, so a session in any other zone would
 * shift every instant it reads (seen with America/St_Johns): sessions are pinned to UTC. They are READ COMMITTED whatever
 * the database says, so that a transaction need not say so in a statement of its own.
 *
 * Compiling a query costs more than it saves here: on 100,000 jobs counting every cover line took 1,060 ms of a
 * processor with the server's jit and 340 ms without (docs/measured.md).
 */
function poolSettings(connectionString: string) {
  const isolation = '-c default_transaction_isolation=read\\ committed';
  return { connectionString, max: 10, options: `-c TimeZone=UTC -c jit=off ${isolation}` };
}

// Next bundles pages and instrumentation apart and reloads modules in development: one client for all of them.
const shared: Shared = sharedAcrossBundles();
type Shared = { client?: Db | undefined; pool?: Pool | undefined };

function sharedAcrossBundles(): Shared {
  const key = Symbol.for('mendpost.db');
  if (!Reflect.has(globalThis, key)) Reflect.set(globalThis, key, {});
  return Reflect.get(globalThis, key);
}
