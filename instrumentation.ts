import type { Instrumentation } from 'next';

/** Runs once when the app starts, before the first request. Next compiles it for other runtimes too: no Node names. */
export async function register() {
  if (process.env['NEXT_RUNTIME'] !== 'nodejs') return;
  await (await import('@/lib/serving/start')).startServing();
}

/** Every fault that no action and no page expected; Next has made its digest, which the error page shows. */
export const onRequestError: Instrumentation.onRequestError = async (error, request, context) => {
  if (process.env['NEXT_RUNTIME'] !== 'nodejs') return;
  (await import('@/lib/serving/tell-fault')).tellFault(error, request, context);
};
