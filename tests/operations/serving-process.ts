/**
 * A process that serves as the app does, with a slow address, and tells its parent what it does. The work in hand takes
 * as long as its first argument says, in milliseconds.
 */
import { createServer } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import { requestIdNow } from '@/lib/log';
import { readiness } from '@/lib/serving/readiness';
import { serving } from '@/lib/serving/serving';
import { stopOnSignal } from '@/lib/serving/stop';
import { watchRequests } from '@/lib/serving/watch-requests';

const [workTakes = '0'] = process.argv.slice(2);
const inHand = wait(Number(workTakes)).then(() => process.send?.('work done'));

watchRequests([
  { page: '/slow/[token]', matches: /^\/slow\/[^/]+$/ },
  { page: '/ready', matches: /^\/ready$/ },
]);
stopOnSignal([() => inHand]);
const server = createServer(async (request, response) => {
  if (request.url === '/ready') {
    // Whether the database answers is no matter here.
    const { status } = await readiness();
    response.writeHead(serving.isStopping ? 503 : 200).end(status);
    return;
  }
  response.writeHead(200, { 'content-type': 'text/plain' });
  response.write('begun ');
  await wait(Number(request.headers['x-takes'] ?? 0));
  response.end(`ended ${requestIdNow()}`);
});
server.listen(0, '127.0.0.1', () => {
  const address = server.address();
  process.send?.({ port: typeof address === 'object' && address ? address.port : 0 });
});
