import { createHash, timingSafeEqual } from 'node:crypto';
import { config } from '@/lib/config';
import { writeMetrics } from './gauges';

/** Answers a scrape: 404 without METRICS_TOKEN, 401 without `Authorization: Bearer` and that token (RFC 6750). */
export async function answerMetrics(authorization: string | null): Promise<Response> {
  const headers = { 'cache-control': 'no-store' };
  const token = config.metricsToken;
  if (!token) return new Response('Not found\n', { status: 404, headers });
  if (!isSame(authorization ?? '', `Bearer ${token}`)) {
    return new Response('Unauthorized\n', {
      status: 401,
      headers: { ...headers, 'www-authenticate': 'Bearer realm="metrics"' },
    });
  }
  const { text, contentType } = await writeMetrics();
  return new Response(text, { headers: { ...headers, 'content-type': contentType } });
}

/** Compares digests, so that the time taken tells neither length nor beginning. */
function isSame(given: string, expected: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(given), digest(expected));
}
