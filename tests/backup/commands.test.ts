import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { authSecret, config } from '@/lib/config';
import { startEmbedded } from '@/lib/db/embedded';
import { takeLock } from '@/lib/db/lock';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { makeWorkshop } from '@/tests/makers/workshop';
import { rowsOf } from './filled';

useDatabase();
// Each command is a program of its own that starts from nothing.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-commands-'));
const withSecret = path.join(folder, 'with.tar');
const without = path.join(folder, 'without.tar');
const source = path.join(folder, 'source');
const ours = { DATABASE_URL: config.databaseUrl, DATA_DIR: source, AUTH_SECRET: authSecret() };

/** A command without npm; only the settings that are given, none of the tests' own. */
async function run(command: string, given: string[], settings: Record<string, string>) {
  const { DATABASE_URL: _url, AUTH_SECRET: _secret, DATA_DIR: _folder, ...environment } = process.env;
  const child = spawn(
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', `lib/commands/${command}.ts`, ...given],
    { env: { ...environment, NODE_ENV: 'development', ...settings } },
  );
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (text: Buffer) => {
      said += text;
    });
  const code = await new Promise((resolve) => child.on('close', resolve));
  return { code, said };
}

beforeAll(async () => {
  const now = new Date('2026-11-25T10:30:00Z');
  await makeBooking({ repairId: (await makeWorkshop(now)).repairId, now });
  mkdirSync(source);
  writeFileSync(path.join(source, 'secret'), authSecret());
  const [first, second] = await Promise.all([
    run('backup', ['--to', withSecret], ours),
    run('backup', ['--to', without, '--without-secret'], ours),
  ]);
  expect(first.said).toContain('The secret is in it');
  expect(second.said).toContain('The secret is not in it');
});
afterAll(() => rmSync(folder, { recursive: true }));

test('a workshop comes back with its secret, which only its owner may read', async () => {
  const place = path.join(folder, 'place');
  const { code, said } = await run('restore', [withSecret], { DATA_DIR: place });
  expect(said).toContain('Restored and compared, every row and every file');
  expect(code).toBe(0);
  expect(readFileSync(path.join(place, 'secret'), 'utf8')).toBe(authSecret());
  expect(statSync(path.join(place, 'secret')).mode & 0o777).toBe(0o600);
  const embedded = await startEmbedded(place);
  expect(await rowsOf(embedded.url)).toEqual(await rowsOf(config.databaseUrl));
  await embedded.stop();
});

test('without the right secret nothing is opened, made or written', async () => {
  const place = path.join(folder, 'never');
  const none = await run('restore', [without], { DATA_DIR: place });
  expect(none).toMatchObject({ code: 1 });
  expect(none.said).toContain('This backup is without the secret');
  const other = await run('restore', [withSecret], {
    DATA_DIR: place,
    AUTH_SECRET: 'another one, another one, another',
  });
  expect(other).toMatchObject({ code: 1 });
  expect(other.said).toContain('is not the one this backup was made with');
  for (const each of [none, other]) expect(each.said).toContain('owner:reset -- ADDRESS --second-step-off');
  expect(existsSync(place)).toBe(false);
});

test('a look at a file tells what is in it and writes nothing', async () => {
  const place = path.join(folder, 'never');
  const { code, said } = await run('restore', [without, '--check'], { DATA_DIR: place });
  expect(code).toBe(0);
  expect(said).toMatch(/^A whole backup of .+, 0 files, without the secret\.\n$/);
  expect(existsSync(place)).toBe(false);
});

test('a place where the app runs is left alone, by a restore and by a move', async () => {
  const place = path.join(folder, 'busy');
  mkdirSync(path.join(place, 'database'), { recursive: true });
  const lock = await takeLock(place, 'http://127.0.0.1:3000');
  const restore = await run('restore', [withSecret], { DATA_DIR: place });
  expect(restore).toEqual({
    code: 1,
    said: expect.stringMatching(/\nThe app runs on .+ Stop it first\.\n$/),
  });
  const move = await run('move', [], { DATA_DIR: place, DATABASE_URL: 'postgresql://127.0.0.1:1/nowhere' });
  expect(move).toEqual({ code: 1, said: expect.stringMatching(/^The app runs on .+ Stop it first.+\n$/) });
  if (lock.taken) await lock.release();
});

test('wrong words are answered by how to say it', async () => {
  const { code, said } = await run('restore', ['one', 'two'], { DATA_DIR: folder });
  expect({ code, said }).toEqual({
    code: 2,
    said: 'Usage: npm run restore -- FILE [--check] [--other-secret]\n',
  });
});
