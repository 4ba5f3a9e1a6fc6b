import { setTimeout as wait } from 'node:timers/promises';
import type PgBoss from 'pg-boss';
import { now } from '@/lib/clock';
import { log } from '@/lib/log';
import { mailQueue, openQueue, type QueueOptions } from './boss';
import { deliver, TryAgain } from './deliver';
import { recoverMail } from './recover';

export type Worker = { stop(): Promise<void> };
export type WorkerOptions = QueueOptions & { smtpUrl?: string | undefined; recoverSeconds?: number };

type Carried = { mailId: string; requestId?: string };

/** How long a stop waits for the message in hand; what takes longer is tried again by whoever works next. */
const lastWait = 8000;

/** Starts handing out mail, and puts back what an earlier worker left behind. Resolves once it is working. */
export async function openWorker(options: WorkerOptions = {}): Promise<Worker> {
  const queue = openQueue(options);
  const { boss } = queue;
  boss.on('error', (error) => log.error('mail-queue-failed', {}, error));
  await boss.start();
  await recover();
  const recovering = setInterval(
    () => void recover().catch((error: unknown) => log.error('mail-recovery-failed', {}, error)),
    (options.recoverSeconds ?? 300) * 1000,
  );
  const told = new AbortController();
  const working = handOut(boss, options, told.signal);

  let stopping: Promise<void> | undefined;
  const stop = async () => {
    clearInterval(recovering);
    told.abort();
    await Promise.race([working, wait(lastWait, undefined, { ref: false })]);
    await boss.stop({ graceful: false });
    await queue.close();
  };
  return { stop: () => (stopping ??= stop()) };
}

/**
 * One message after the other until it is told to stop. Not pg-boss's own `work`, because 10.4 does not wait for the
 * statement that marks a job: while the database is away that ends the whole process by an unhandled rejection (seen with
 * a killed server). Here it is waited for, and a job that could not be marked is tried again after its two minutes.
 */
async function handOut(boss: PgBoss, options: WorkerOptions, stop: AbortSignal): Promise<void> {
  while (!stop.aborted) {
    const hadOne = await nextJob(boss, options).catch((error: unknown) => {
      log.error('mail-queue-failed', {}, error);
      return false;
    });
    if (!hadOne) await wait((options.pollSeconds ?? 2) * 1000, undefined, { signal: stop }).catch(() => {});
  }
}

async function nextJob(boss: PgBoss, options: WorkerOptions): Promise<boolean> {
  const [job] = await boss.fetch<Carried>(mailQueue, { includeMetadata: true, batchSize: 1 });
  if (!job) return false;
  const isLast = job.retryCount >= job.retryLimit;
  const { mailId, requestId } = job.data;
  const trouble = await tryOnce({ ...options, mailId, isLast }, requestId ? { requestId } : {});
  if (trouble) await boss.fail(mailQueue, job.id, { message: trouble });
  else await boss.complete(mailQueue, job.id);
  return true;
}

async function recover(): Promise<void> {
  const count = await recoverMail(now());
  if (count > 0) log.info('mail-recovered', { count });
}

/**
 * What the queue keeps of a try that did not succeed, or null. It must name nobody: anything unexpected is replaced by a
 * plain sentence.
 */
async function tryOnce(
  attempt: Parameters<typeof deliver>[0],
  from: { requestId?: string },
): Promise<string | null> {
  const ids = { ...from, mailId: attempt.mailId };
  try {
    const delivery = await deliver(attempt);
    if (delivery !== 'not-ours') log.info(`mail-${delivery}`, ids);
    return null;
  } catch (error) {
    if (error instanceof TryAgain) {
      log.info('mail-waits', ids);
      return error.message;
    }
    log.error('mail-try-failed', ids, error);
    return 'The try ended by a fault of the program.';
  }
}
