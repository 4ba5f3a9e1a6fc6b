import { request as ask, createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { isReady } from './instance';

export type Backend = { name: string; port: number };
export type Balancer = { stop: () => Promise<void> };

/**
 * A balancer as small as one can be, for tests: every request goes to the next instance that says it is ready, so that
 * hardly two requests of one person meet the same one. It writes the headers that a trusted proxy has to write. The
 * address of the caller may be played with x-test-caller, since all tests come from one machine.
 */
export function startBalancer(port: number, backends: readonly Backend[]): Promise<Balancer> {
  const ready = new Set(backends.map(({ name }) => name));
  const looking = setInterval(() => {
    for (const { name, port: of } of backends) {
      void isReady(of).then((is) => (is ? ready.add(name) : ready.delete(name)));
    }
  }, 200);
  let turn = 0;
  const next = () => {
    const able = backends.filter(({ name }) => ready.has(name));
    turn += 1;
    return able[turn % Math.max(1, able.length)];
  };
  const server = createServer((request, response) => {
    const backend = next();
    if (backend) pass(request, response, backend);
    else response.writeHead(503).end('No instance is ready.\n');
  });
  return new Promise((resolve) => {
    server.listen(port, '127.0.0.1', () =>
      resolve({
        async stop() {
          clearInterval(looking);
          server.close();
          server.closeAllConnections();
        },
      }),
    );
  });
}

function pass(request: IncomingMessage, response: ServerResponse, backend: Backend): void {
  const { 'x-test-caller': caller, connection: _hop, ...headers } = request.headers;
  const onward = ask(
    {
      host: '127.0.0.1',
      port: backend.port,
      method: request.method,
      path: request.url,
      // One connection a request: what an instance that stops has closed is never written to.
      agent: false,
      headers: {
        ...headers,
        'x-forwarded-for': caller ?? '192.0.2.1',
        'x-forwarded-proto': 'http',
        'x-forwarded-host': request.headers.host,
      },
    },
    (answer) => {
      const { connection: _theirs, 'keep-alive': _kept, ...kept } = answer.headers;
      response.writeHead(answer.statusCode ?? 502, { ...kept, 'x-served-by': backend.name });
      answer.pipe(response);
    },
  );
  onward.on('error', () => {
    if (response.headersSent) response.destroy();
    else response.writeHead(502, { 'x-served-by': backend.name }).end('The instance did not answer.\n');
  });
  response.on('close', () => onward.destroy());
  request.pipe(onward);
}
