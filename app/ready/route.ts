import { isDatabaseReachable } from '@/lib/db/ready';

/** Readiness: the database answers too. */
export async function GET() {
  const isReady = await isDatabaseReachable();
  return Response.json(
    { status: isReady ? 'ready' : 'database not reachable' },
    { status: isReady ? 200 : 503, headers: { 'cache-control': 'no-store' } },
  );
}
