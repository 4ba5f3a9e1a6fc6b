import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { afterEach, expect, test, vi } from 'vitest';
import { z } from 'zod';

vi.setConfig({ testTimeout: 40_000 });

const opened: ChildProcess[] = [];
afterEach(() => {
  for (const child of opened.splice(0)) child.kill('SIGKILL');
});

async function serve(o: { workTakes?: number; settings?: Record<string, string> } = {}) {
  const child = fork('tests/operations/serving-process.ts', [String(o.workTakes ?? 0)], {
    execArgv: ['--import', 'tsx'],
    env: { ...process.env, LOG_LEVEL: 'info', LOG_FORMAT: 'json', ...o.settings },
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
  });
  opened.push(child);
  let said = '';
  child.stdout?.on('data', (text: Buffer) => {
    said += text;
  });
  const messages: unknown[] = [];
  child.on('message', (message) => messages.push(message));
  const exit = once(child, 'exit').then(([code, signal]) => ({
    code: z.number().nullable().parse(code),
    signal,
  }));
  const port = await vi.waitFor(
    () => z.object({ port: z.number() }).parse(messages.find((m) => typeof m === 'object')).port,
    {
      timeout: 20_000,
    },
  );
  return { child, exit, messages, origin: `http://127.0.0.1:${port}`, log: () => readLog(said) };
}

const line = z.looseObject({ event: z.string() });
function readLog(said: string) {
  return said
    .trim()
    .split('\n')
    .map((row) => line.parse(JSON.parse(row)));
}

test('a stop answers the request in flight, finishes the work in hand, takes nothing new, and ends with 0', async () => {
  const { child, exit, messages, origin, log } = await serve({ workTakes: 1200 });
  const slow = fetch(`${origin}/slow/Q2xhdXNlLXRva2Vu`, { headers: { 'x-takes': '1500' } });
  // The answer has begun, so the request is in flight.
  const answer = await slow;
  const told = performance.now();
  child.kill('SIGTERM');
  // Asked before the stop has begun, it would count as open too.
  await vi.waitFor(() => expect(log()[0]?.event).toBe('stopping'));
  await vi.waitFor(() => expect(fetch(`${origin}/ready`)).rejects.toThrow());
  expect(await answer.text()).toMatch(/^begun ended [0-9a-f-]{36}$/);
  expect((await exit).code).toBe(0);
  expect(performance.now() - told).toBeLessThan(4000);
  expect(messages).toContain('work done');
  // A question for /ready may slip in before the door is shut, and is logged like any other.
  const events = log().filter(({ route }) => route !== '/ready');
  expect(events.map(({ event }) => event)).toEqual(['stopping', 'request', 'stopped']);
  expect(events[0]).toMatchObject({ signal: 'SIGTERM', count: 1 });
  expect(JSON.stringify(log())).not.toContain('Q2xhdXNl');
});

test('while it drains it still answers, but is not ready', async () => {
  const { child, exit, origin } = await serve({ settings: { DRAIN_SECONDS: '1' } });
  expect((await fetch(`${origin}/ready`)).status).toBe(200);
  child.kill('SIGTERM');
  await vi.waitFor(async () => expect((await fetch(`${origin}/ready`)).status).toBe(503), { interval: 20 });
  const late = await fetch(`${origin}/slow/x`);
  expect(late.status).toBe(200);
  expect(late.headers.get('connection')).toBe('close');
  await late.text();
  expect((await exit).code).toBe(0);
});

test('the same wish twice within a second is one, a later one ends the process at once', async () => {
  const { child, exit, origin, messages } = await serve({ workTakes: 20_000 });
  await (await fetch(`${origin}/slow/x`)).text();
  child.kill('SIGINT');
  child.kill('SIGTERM');
  await new Promise((resolve) => setTimeout(resolve, 1300));
  expect(child.exitCode).toBeNull();
  child.kill('SIGTERM');
  expect((await exit).code).toBe(1);
  expect(messages).not.toContain('work done');
});

test('without the launcher at the other end it ends by itself', async () => {
  const { child, exit } = await serve();
  child.disconnect();
  expect((await exit).code).toBe(1);
});

test('a request keeps the id of a proxy that is trusted, and gets its own otherwise', async () => {
  const given = { 'x-request-id': 'from-the-proxy-1' };
  const trusting = await serve({ settings: { TRUSTED_PROXY: 'on' } });
  const believed = await fetch(`${trusting.origin}/slow/x`, { headers: given });
  expect(believed.headers.get('x-request-id')).toBe('from-the-proxy-1');
  expect(await believed.text()).toBe('begun ended from-the-proxy-1');
  const odd = await fetch(`${trusting.origin}/slow/x`, { headers: { 'x-request-id': 'mira@example.org' } });
  expect(odd.headers.get('x-request-id')).toMatch(/^[0-9a-f-]{36}$/);
  await odd.text();
  await vi.waitFor(() =>
    expect(trusting.log()[0]).toMatchObject({
      event: 'request',
      requestId: 'from-the-proxy-1',
      method: 'GET',
      route: '/slow/[token]',
      status: 200,
    }),
  );
  const wary = await serve();
  const made = await fetch(`${wary.origin}/slow/x`, { headers: given });
  expect(made.headers.get('x-request-id')).toMatch(/^[0-9a-f-]{36}$/);
  await made.text();
});
