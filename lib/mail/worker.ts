import { now } from '@/lib/clock';
import { log } from '@/lib/log';
import { mailQueue, openQueue, type QueueOptions } from './boss';
import { deliver, TryAgain } from './deliver';
import { recoverMail } from './recover';

export type Worker = { stop(): Promise<void> };
export type WorkerOptions = QueueOptions & { smtpUrl?: string | undefined; recoverSeconds?: number };

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

  const workerId = await boss.work<{ mailId: string; requestId?: string }>(
    mailQueue,
    { includeMetadata: true, batchSize: 1 },
    async (jobs) => {
      for (const job of jobs) {
        const isLast = job.retryCount >= job.retryLimit;
        const { mailId, requestId } = job.data;
        await tryOnce({ ...options, mailId, isLast }, requestId ? { requestId } : {});
      }
      // Look for the next one at once; pg-boss waits between jobs otherwise.
      boss.notifyWorker(workerId);
    },
  );

  let stopping: Promise<void> | undefined;
  const stop = async () => {
    clearInterval(recovering);
    await boss.stop({ graceful: true, wait: true, timeout: 8000 });
    await queue.close();
  };
  return { stop: () => (stopping ??= stop()) };
}

async function recover(): Promise<void> {
  const count = await recoverMail(now());
  if (count > 0) log.info('mail-recovered', { count });
}

/** The queue keeps what is thrown here, so it must name nobody: anything unexpected is replaced by a plain sentence. */
async function tryOnce(attempt: Parameters<typeof deliver>[0], from: { requestId?: string }): Promise<void> {
  const ids = { ...from, mailId: attempt.mailId };
  try {
    const delivery = await deliver(attempt);
    if (delivery !== 'not-ours') log.info(`mail-${delivery}`, ids);
  } catch (error) {
    if (error instanceof TryAgain) {
      log.info('mail-waits', ids);
      throw error;
    }
    log.error('mail-try-failed', ids, error);
    throw new TryAgain('The try ended by a fault of the program.');
  }
}
