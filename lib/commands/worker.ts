/** The app without pages, for JOBS=only: mail and the clock's rounds, and the addresses that watch over it. */
import { createServer, type ServerResponse } from 'node:http';
import { config } from '@/lib/config';
import { answerMetrics } from '@/lib/metrics/answer';
import { readiness } from '@/lib/serving/readiness';
import { startServing } from '@/lib/serving/start';

const server = createServer((request, response) => {
  void answer(request.url ?? '', request.headers.authorization ?? null).then(
    (made) => send(made, response),
    () => response.writeHead(500).end(),
  );
});

await startServing();
server.listen(config.port, config.host);

async function answer(address: string, authorization: string | null): Promise<Response> {
  if (address === '/health') return Response.json({ status: 'alive' });
  if (address === '/metrics') return answerMetrics(authorization);
  if (address !== '/ready') return new Response('Not found\n', { status: 404 });
  const { isReady, status } = await readiness();
  return Response.json({ status }, { status: isReady ? 200 : 503 });
}

async function send(made: Response, response: ServerResponse): Promise<void> {
  response.writeHead(made.status, Object.fromEntries(made.headers));
  response.end(await made.text());
}
