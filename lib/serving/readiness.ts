import { databaseStanding } from '@/lib/db/pending';
import { serving } from './serving';

/** Whether new requests are welcome, and in a word why not: stopping, or the database not reachable or behind. */
export async function readiness(): Promise<{ isReady: boolean; status: string }> {
  if (serving.isStopping) return { isReady: false, status: 'stopping' };
  const standing = await databaseStanding();
  // That may have changed while the database was asked.
  if (serving.isStopping) return { isReady: false, status: 'stopping' };
  return standing === 'fine'
    ? { isReady: true, status: 'ready' }
    : { isReady: false, status: standing === 'not reachable' ? 'database not reachable' : standing };
}
