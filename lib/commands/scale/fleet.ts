/**
 * Two instances and a worker on one PostgreSQL server and one S3-compatible store, behind a balancer that knows no
 * sessions: what the walks are made on with E2E_FLEET=on. Settings as for `npm start`, PORT being the balancer's; the
 * port FLEET_PORT tells what the instances wrote, and restarts one when asked. FLEET_BALANCER=nginx puts nginx in front.
 */
import { readdirSync } from 'node:fs';
import { createServer, type ServerResponse } from 'node:http';
import path from 'node:path';
import { z } from 'zod';
import { startBalancer } from './balancer';
import { instance } from './instance';
import { startNginx } from './nginx';
import { startObjectStore } from './object-store';

const text = z.string().min(1);
const given = z
  .object({ DATABASE_URL: text, DATA_DIR: text, PORT: z.coerce.number(), FLEET_PORT: z.coerce.number() })
  .extend({ FLEET_BALANCER: z.enum(['own', 'nginx']).default('own') })
  .parse(process.env);

const store = await startObjectStore();
const shared = {
  ...store.settings,
  NODE_ENV: 'production',
  DEMO: 'on',
  AUTH_SECRET: 'only for tests, the same for all of them',
  TRUSTED_PROXY: 'on',
  METRICS_TOKEN: 'only-for-tests-only',
  // Longer than the balancer takes to notice.
  DRAIN_SECONDS: '1',
};
const of = (name: string, jobs: string) => ({
  ...shared,
  JOBS: jobs,
  DATA_DIR: path.join(given.DATA_DIR, name),
});
const a = instance('a', given.FLEET_PORT + 1, of('a', 'off'));
const b = instance('b', given.FLEET_PORT + 2, of('b', 'off'));
const worker = instance('worker', given.FLEET_PORT + 3, of('worker', 'only'));
const fleet = [a, b, worker];

// The first makes the tables and the demonstration, the others find them.
await a.start();
await Promise.all([b.start(), worker.start()]);
const balance = given.FLEET_BALANCER === 'nginx' ? startNginx : startBalancer;
const balancer = await balance(given.PORT, [a, b]);

const controls = createServer(async (request, response) => {
  const [, what, name] = (request.url ?? '').split('/');
  const one = fleet.find((each) => each.name === name);
  if (what === 'log' && one) return void response.end(one.log());
  if (what === 'files') return tell(response, files());
  if (what !== 'restart' || !one || request.method !== 'POST') return void response.writeHead(404).end();
  const stopped = await one.stop();
  await one.start();
  return tell(response, stopped);
});
controls.listen(given.FLEET_PORT, '127.0.0.1');

function tell(response: ServerResponse, what: unknown): void {
  response.setHeader('content-type', 'application/json').end(JSON.stringify(what));
}

/** What lies in the common store, and what lies beside it in a folder that only one of them sees. */
function files() {
  const own = fleet.flatMap(({ name }) => filesBelow(path.join(given.DATA_DIR, name)));
  return { stored: filesBelow(store.folder).length, own };
}

function filesBelow(folder: string): string[] {
  try {
    const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
    return entries.filter((entry) => entry.isFile()).map((entry) => entry.name);
  } catch {
    return [];
  }
}

let closing = false;
for (const signal of ['SIGTERM', 'SIGINT'] as const) {
  process.on(signal, async () => {
    if (closing) return;
    closing = true;
    await balancer.stop();
    controls.close();
    await Promise.all(fleet.map((each) => each.stop()));
    await store.stop();
    process.exit(0);
  });
}
