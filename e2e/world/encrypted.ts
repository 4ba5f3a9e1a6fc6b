import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { request as ask } from 'node:http';
import { request as askEncrypted, createServer } from 'node:https';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { ownCertificate } from './own-certificate';
import { place } from './place';

const proxyPort = place.port + 5;
const appPort = place.port + 6;

/** What the proxy tells of every caller; the log must not keep it. */
export const CALLER = '198.51.100.77';

export type Answer = { status: number; headers: Record<string, string>; body: string };
export type Asked = { method?: string; headers?: Record<string, string>; body?: Buffer };

export type Encrypted = {
  origin: string;
  /** Asks through the proxy, whose certificate is checked. */
  ask: (address: string, o?: Asked) => Promise<Answer>;
  /** Everything the app has written so far. */
  log: () => string;
  stop: () => Promise<void>;
};

/**
 * A second process of the app on the rows of the walks, as behind a proxy that encrypts: an https address, a log at its
 * most talkative, and before it a proxy that is as small as one can be. The first process goes on sending the mail.
 */
export async function startEncrypted(): Promise<Encrypted> {
  const origin = `https://localhost:${proxyPort}`;
  const { key, cert } = ownCertificate();
  const app = spawn(
    process.execPath,
    [
      '--no-deprecation',
      'node_modules/next/dist/bin/next',
      'start',
      '-H',
      '127.0.0.1',
      '-p',
      String(appPort),
    ],
    {
      stdio: ['ignore', 'pipe', 'pipe'],
      env: {
        ...process.env,
        NODE_ENV: 'production',
        ...(place.databaseUrl && { DATABASE_URL: place.databaseUrl }),
        DATA_DIR: place.dataDir,
        // Links of one process open at the other.
        AUTH_SECRET: readFileSync(path.join(place.dataDir, 'secret'), 'utf8').trim(),
        PORT: String(appPort),
        APP_URL: origin,
        CLOCK_FILE: place.clockFile,
        TRUSTED_PROXY: 'on',
        DEMO: 'on',
        JOBS: 'off',
        LOG_LEVEL: 'info',
        LOG_FORMAT: 'json',
      },
    },
  );
  let written = '';
  for (const stream of [app.stdout, app.stderr]) {
    stream.on('data', (text: Buffer) => {
      written += text;
    });
  }
  const proxy = createServer({ key, cert }, (request, response) => {
    const headers = { ...request.headers, 'x-forwarded-for': CALLER, 'x-forwarded-proto': 'https' };
    const { method, url: path } = request;
    const onward = ask(
      { host: '127.0.0.1', port: appPort, agent: false, method, path, headers },
      (answer) => {
        response.writeHead(answer.statusCode ?? 502, answer.headers);
        answer.pipe(response);
      },
    );
    onward.on('error', () => response.destroy());
    request.pipe(onward);
  });
  await new Promise<void>((resolve) => proxy.listen(proxyPort, '127.0.0.1', resolve));
  const stop = async () => {
    proxy.close();
    proxy.closeAllConnections();
    const ended = new Promise((resolve) => app.on('exit', resolve));
    app.kill('SIGTERM');
    if (app.exitCode === null) await ended;
  };
  const asking = (address: string, o: Asked = {}) => askOnce(new URL(address, origin), { ...o, ca: cert });
  for (let left = 600; left > 0 && app.exitCode === null; left -= 1) {
    const answer = await asking('/ready').catch(() => null);
    if (answer?.status === 200) return { origin, ask: asking, log: () => written, stop };
    await wait(100);
  }
  await stop();
  throw new Error(`The encrypted app did not start.\n${written.slice(-2000)}`);
}

function askOnce(
  address: URL,
  { method = 'GET', headers = {}, body, ca }: Asked & { ca: string },
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    // By address, since localhost may be another one first; the certificate is for the name.
    const where = { host: '127.0.0.1', servername: 'localhost', port: address.port, agent: false, ca };
    const all = { host: address.host, ...headers };
    const call = askEncrypted(
      { ...where, method, path: address.pathname + address.search, headers: all },
      (answer) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('end', () =>
          resolve({
            status: answer.statusCode ?? 0,
            headers: Object.fromEntries(
              Object.entries(answer.headers).map(([name, value]) => [name, String(value)]),
            ),
            body: Buffer.concat(parts).toString('utf8'),
          }),
        );
      },
    );
    call.on('error', reject);
    call.end(body);
  });
}
