/** Runs once when the app starts, before the first request. Next compiles it for other runtimes too: no Node names. */
export async function register() {
  if (process.env['NEXT_RUNTIME'] !== 'nodejs') return;
  const { config } = await import('@/lib/config');
  if (config.hasJobs) {
    (await import('@/lib/jobs/start-clock')).startClock();
    await (await import('@/lib/mail/worker')).startWorker();
  } else (await import('@/lib/with-launcher')).endWithLauncher();
}
