import { startNightly } from '@/lib/backup/nightly';
import { config } from '@/lib/config';
import { startClock } from '@/lib/jobs/start-clock';
import { log } from '@/lib/log';
import { captureConsole } from '@/lib/log/terminal';
import { openWorker } from '@/lib/mail/worker';
import { readRoutePatterns } from './route-patterns';
import { serving } from './serving';
import { stopOnSignal } from './stop';
import { watchRequests } from './watch-requests';

/** What every process does before its first request: its log, its requests' ids, its share of the work, its end. */
export async function startServing(): Promise<void> {
  if (serving.isStarted) return;
  serving.isStarted = true;
  if (config.isProduction) {
    captureConsole((level, error) => {
      // What has a digest is told by onRequestError, with its request.
      if (!(error instanceof Error && 'digest' in error)) log[level]('console', {}, error);
    });
  }
  watchRequests(readRoutePatterns());
  const finishers = config.hasJobs ? await startWork() : [];
  stopOnSignal(finishers);
  log.info('started', { port: config.port, kind: config.hasPages ? 'pages' : 'worker' });
}

async function startWork(): Promise<(() => Promise<unknown>)[]> {
  const clock = startClock();
  const nightly = startNightly();
  const worker = await openWorker();
  return [clock.stop, nightly.stop, worker.stop];
}
