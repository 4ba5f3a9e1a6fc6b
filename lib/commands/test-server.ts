/**
 * `npm run test:server`: the database tests again, with the races, on a PostgreSQL server: the one of TEST_DATABASE_URL
 * or a throwaway one. With `-- --browser` the walks too. `-- --short` takes of the database tests those whose subject is the
 * database itself.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { databaseUrl, isLocalDatabase, onServer } from '@/lib/db/server';
import { build, isBuilt } from './build';
import { needChromium } from './chromium';
import { finish, runSteps, runUnitTests, runWalks } from './test-steps';
import { startThrowawayPostgres } from './throwaway-postgres';

/**
 * Races, transactions and locks, copies and moves, faults, limits that are counted in the database, statements and their
 * plans, and the queue of letters. What the other tests ask is decided by the rules, whichever database carries them; they
 * run on the embedded one each time.
 */
const SHORT = /^tests\/((races|platform|backup|faults|operations|speed|mail)\/|people\/[\w-]*limit)/;

const given = process.env['TEST_DATABASE_URL'];
if (given && !isLocalDatabase(given)) {
  console.error('TEST_DATABASE_URL is not on this machine: tests empty the database they use.');
  process.exit(1);
}
const server = given ? { url: given, stop() {} } : await startThrowawayPostgres();
const walkDatabase = 'mendpost_walk';

const counts = await runSteps([
  {
    name: 'database tests and races on a server',
    run: () => runUnitTests(databaseTests(), { TEST_DATABASE_URL: server.url }),
  },
  ...(process.argv.includes('--browser') ? [{ name: 'browser tests on a server', run: walk }] : []),
]);
server.stop();
finish(counts);

function databaseTests(): string[] {
  const isShort = process.argv.includes('--short');
  return (
    readdirSync('tests', { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.test\.tsx?$/.test(name))
      .map((name) => path.join('tests', name))
      .filter((file) => readFileSync(file, 'utf8').includes("from '@/tests/database'"))
      // What the demonstration tells hangs on no database, and takes the longest of all; the walk below fills it on the server.
      .filter((file) => file !== path.join('tests', 'demo', 'seed.test.ts'))
      .filter((file) => !isShort || SHORT.test(file.split(path.sep).join('/')))
  );
}

async function walk() {
  if (!isBuilt()) await build();
  await onServer(server.url, async (client) => {
    await client.query(`drop database if exists ${walkDatabase} with (force)`);
    await client.query(`create database ${walkDatabase}`);
  });
  const env = { CHROMIUM_PATH: needChromium(), E2E_DATABASE_URL: databaseUrl(server.url, walkDatabase) };
  // What is shown does not hang on the database: the walk through a whole job and its claim, once, without script.
  return runWalks(env, ['--project=script-off', 'main-job']);
}
