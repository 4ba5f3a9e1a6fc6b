import { createServer } from 'node:http';
import { expect, test, vi } from 'vitest';

/** What a server that is watched answers with, whatever it was asked for. */
async function headersWhere(appUrl: string): Promise<Headers> {
  vi.resetModules();
  vi.stubEnv('APP_URL', appUrl);
  const { watchRequests } = await import('@/lib/serving/watch-requests');
  watchRequests([]);
  // As Next answers for a file that the build has made.
  const server = createServer((_, response) => response.writeHead(200, { 'cache-control': 'public' }).end());
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  const port = typeof address === 'object' ? address?.port : 0;
  const { headers } = await fetch(`http://127.0.0.1:${port}/_next/static/a.js`);
  server.close();
  server.closeAllConnections();
  return headers;
}

// First without: a process goes on watching, and its answers keep what was asked for once.
test('an answer asks for encrypted connections where the address is encrypted, and nowhere else', async () => {
  const plain = await headersWhere('http://127.0.0.1:3000');
  expect(plain.get('strict-transport-security')).toBeNull();
  const encrypted = await headersWhere('https://mend.example.org');
  expect(encrypted.get('strict-transport-security')).toBe('max-age=31536000');
  expect(encrypted.get('cache-control')).toBe('public');
});
