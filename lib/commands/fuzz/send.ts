import { Agent, request } from 'node:http';

export type Sent = {
  method: string;
  path: string;
  headers: Record<string, string>;
  body?: Buffer | undefined;
};
export type Answer = { status: number; headers: Record<string, string>; body: string; ms: number };

const agent = new Agent({ keepAlive: true, maxSockets: 16 });
/** Longer than the slowest answer on a busy machine, a large form that is sent whole. */
const HANGS = 30_000;

/** Sends a request as it stands; resolves with the answer, or with the fault that there was none. */
export function send(origin: string, sent: Sent): Promise<Answer | { fault: string }> {
  const began = performance.now();
  return new Promise((resolve) => {
    const { hostname, port } = new URL(origin);
    const { method, path, headers, body } = sent;
    const call = request(
      { agent, hostname, port, method, path, headers, timeout: HANGS, maxHeaderSize: 1 << 20 },
      (response) => {
        const parts: Buffer[] = [];
        response.on('data', (part: Buffer) => parts.push(part));
        response.on('error', (error) => resolve({ fault: `broke off: ${error.message}` }));
        response.on('end', () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: Object.fromEntries(
              Object.entries(response.headers).map(([name, value]) => [name, String(value)]),
            ),
            body: Buffer.concat(parts).toString('utf8'),
            ms: performance.now() - began,
          }),
        );
      },
    );
    call.on('timeout', () => call.destroy(new Error('no answer')));
    call.on('error', (error: NodeJS.ErrnoException) =>
      // The app may have closed a connection that rested just as it was taken up again: nothing was asked yet.
      call.reusedSocket && error.code === 'ECONNRESET'
        ? resolve(send(origin, sent))
        : resolve({ fault: error.message }),
    );
    call.end(body);
  });
}

const AT_ONCE = 8;

/** Does some work for each thing, a few at a time; the results are in the order of the things. */
export async function inParallel<T, R>(things: readonly T[], work: (thing: T) => Promise<R>): Promise<R[]> {
  const results: R[] = [];
  const queue = things.entries();
  await Promise.all(
    Array.from({ length: AT_ONCE }, async () => {
      for (const [at, thing] of queue) results[at] = await work(thing);
    }),
  );
  return results;
}
