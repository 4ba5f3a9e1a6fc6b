import { now } from '@/lib/clock';
import { disconnect } from '@/lib/db/client';
import { mailQueue, openQueue, type QueueOptions } from './boss';
import { deliver, TryAgain } from './deliver';
import { recoverMail } from './recover';

export type Worker = { stop(): Promise<void> };
export type WorkerOptions = QueueOptions & { smtpUrl?: string | undefined; recoverSeconds?: number };

/** Starts handing out mail, and puts back what an earlier worker left behind. Resolves once it is working. */
export async function openWorker(options: WorkerOptions = {}): Promise<Worker> {
  const queue = openQueue(options);
  const { boss } = queue;
  boss.on('error', (error) => console.error(`mail queue: ${error.message}`));
  await boss.start();
  await recoverMail(now());
  const recovering = setInterval(
    () => void recoverMail(now()).catch((error: unknown) => report('recovering', error)),
    (options.recoverSeconds ?? 300) * 1000,
  );

  const workerId = await boss.work<{ mailId: string }>(
    mailQueue,
    { includeMetadata: true, batchSize: 1 },
    async (jobs) => {
      for (const job of jobs) {
        const isLast = job.retryCount >= job.retryLimit;
        await tryOnce({ ...options, mailId: job.data.mailId, isLast });
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

/** The queue keeps what is thrown here, so it must name nobody: anything unexpected is replaced by a plain sentence. */
async function tryOnce(attempt: Parameters<typeof deliver>[0]): Promise<void> {
  try {
    await deliver(attempt);
  } catch (error) {
    if (error instanceof TryAgain) throw error;
    report(`message ${attempt.mailId}`, error);
    throw new TryAgain('The try ended by a fault of the program.');
  }
}

function report(what: string, error: unknown): void {
  console.error(`mail: ${what}: ${error instanceof Error ? error.name : 'unknown fault'}`);
}

/**
 * The worker of a running app, once per process. It ends the process itself, because Next, started with
 * NEXT_MANUAL_SIG_HANDLE, leaves that to us: first the message in hand, then a moment for requests in flight, then the
 * database. Without the launcher at the other end of the line there is nothing left to serve.
 */
export async function startWorker(): Promise<void> {
  if (Reflect.has(globalThis, started)) return;
  Reflect.set(globalThis, started, true);
  const worker = await openWorker();
  let isStopping = false;
  const stop = async () => {
    if (isStopping) return;
    isStopping = true;
    const requestsEnd = new Promise((resolve) => setTimeout(resolve, 2000));
    await worker.stop().catch((error: unknown) => report('stopping', error));
    await requestsEnd;
    await disconnect();
    process.exit(0);
  };
  process.on('SIGTERM', () => void stop());
  process.on('SIGINT', () => void stop());
  if (process.connected) process.on('disconnect', () => process.exit(1));
}

// Next bundles its parts apart and reloads modules in development; the process is the same.
const started = Symbol.for('mendpost.mail-worker');
