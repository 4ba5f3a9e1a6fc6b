import { config } from '@/lib/config';
import { disconnect } from '@/lib/db/client';
import { takeLock } from '@/lib/db/lock';

/**
 * Runs a command's work on the database, wherever it lives: the server of DATABASE_URL, the embedded database through
 * the app that is running on it, or the embedded database opened for the time being when no app runs.
 */
export async function withDatabase<T>(work: () => Promise<T>): Promise<T> {
  const close = config.isEmbedded ? await openUnlessRunning() : async () => {};
  try {
    return await work();
  } finally {
    await disconnect();
    await close();
  }
}

// Whoever holds the lock serves the database on its socket; only without a holder may it be opened here.
async function openUnlessRunning(): Promise<() => Promise<void>> {
  const lock = await takeLock(config.dataDir, 'a command');
  if (!lock.taken) return async () => {};
  const { startEmbedded } = await import('@/lib/db/embedded');
  const database = await startEmbedded(config.dataDir);
  return async () => {
    await database.stop();
    await lock.release();
  };
}
