import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { takeLock } from '@/lib/db/lock';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'mendpost-start-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** `npm start` without npm, in a folder of its own; only for starts that end by themselves. */
async function start(settings: Record<string, string>) {
  const { DATABASE_URL: _mine, ...environment } = process.env;
  const child = spawn(
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', 'lib/commands/start.ts'],
    { env: { ...environment, NODE_ENV: 'development', DATA_DIR: folder, ...settings } },
  );
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (text: Buffer) => {
      said += text;
    });
  }
  const code = await new Promise((resolve) => child.on('close', resolve));
  return { code, said };
}

test('a second start on the same data says so in one line and leaves everything alone', async () => {
  const lock = await takeLock(folder, 'http://127.0.0.1:3000');
  const { code, said } = await start({});
  if (lock.taken) await lock.release();
  expect(code).toBe(1);
  expect(said).toMatch(/^Already running on .+ by process \d+, at http:\/\/127\.0\.0\.1:3000\..+\n$/);
  expect(existsSync(path.join(folder, 'database'))).toBe(false);
});

test('a bad setting stops the start in one line', async () => {
  const { code, said } = await start({ PORT: 'many' });
  expect(code).toBe(1);
  expect(said).toMatch(/^Setting not usable: PORT.+\n$/);
});

test('a taken port stops the start in one line, before anything is built or opened', async () => {
  const other = createServer();
  const port = await new Promise<number>((resolve) => {
    other.listen(0, '127.0.0.1', () => {
      const address = other.address();
      resolve(typeof address === 'object' && address ? address.port : 0);
    });
  });
  const { code, said } = await start({ PORT: String(port) });
  other.close();
  expect(code).toBe(1);
  expect(said).toMatch(new RegExp(`^Port ${port} on 127\\.0\\.0\\.1 is taken\\..+\\n$`));
  expect(existsSync(path.join(folder, 'database'))).toBe(false);
});
