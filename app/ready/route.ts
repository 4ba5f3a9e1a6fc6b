import { readiness } from '@/lib/serving/readiness';

/** Readiness: whoever balances may send requests here. */
export async function GET() {
  const { isReady, status } = await readiness();
  return Response.json({ status }, { status: isReady ? 200 : 503, headers: { 'cache-control': 'no-store' } });
}
