import { log } from '@/lib/log';
import { Refusal } from '@/lib/outcome';
import { connect } from './client';
import { isConflict, isOutOfTime } from './errors';
import type { Prisma } from './generated/client';
import { isInsideTransaction, runInside } from './inside';

/** What a use case may do to the database while its transaction is open. */
export type Tx = Prisma.TransactionClient;

const attempts = 4;
const LATE =
  'The workshop’s computer has too much to do just now. Nothing was kept; send it again in a minute.';

/**
 * Runs one use case as one transaction: all of its writes or none. `fn` gets the only usable client; `db` throws
 * meanwhile. A serialization failure or deadlock starts `fn` again, up to three more times, so `fn` must not send,
 * print or remember anything. READ COMMITTED unless `serializable` is asked for. One that gets no turn in time, or takes
 * too long, is refused as 'unavailable', so that a person keeps what they typed.
 */
export async function transaction<T>(
  fn: (tx: Tx) => Promise<T>,
  options: { serializable?: boolean } = {},
): Promise<T> {
  if (isInsideTransaction())
    throw new Error('A transaction was started inside a transaction: pass tx on instead');
  const settings = {
    maxWait: 10_000,
    timeout: 15_000,
    ...(options.serializable && { isolationLevel: 'Serializable' as const }),
  };
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await connect().$transaction((tx) => runInside(() => fn(tx)), settings);
    } catch (error) {
      if (isOutOfTime(error)) {
        log.warn('transaction-late');
        throw Object.assign(new Refusal('unavailable', LATE), { cause: error });
      }
      if (attempt === attempts || !isConflict(error)) throw error;
      log.info('transaction-again', { attempt });
    }
  }
}
