/**
 * `npm run test:scale`: two instances and a worker on one PostgreSQL server and one S3-compatible store, behind a
 * balancer without sticky sessions: a whole job walked through it, bookings made at once, limits shared, every process
 * restarted under load, a photo taken by one instance read from the other. `-- --short` makes fewer bookings;
 * `-- --nginx` puts nginx with deploy/balancer.conf in front instead of a balancer of a few lines.
 */
import { databaseUrl, onServer } from '@/lib/db/server';
import { build, isBuilt } from './build';
import { needChromium } from './chromium';
import { finish, runSteps, runWalks } from './test-steps';
import { startThrowawayPostgres } from './throwaway-postgres';

const isShort = process.argv.includes('--short');
const database = 'mendpost_fleet';
const server = await startThrowawayPostgres();
const env = {
  E2E_FLEET: 'on',
  FLEET_BALANCER: process.argv.includes('--nginx') ? 'nginx' : 'own',
  E2E_DATABASE_URL: databaseUrl(server.url, database),
  // Each is six writes.
  SCALE_BOOKINGS: isShort ? '10' : '90',
  CHROMIUM_PATH: needChromium(),
};

const counts = await runSteps([
  {
    name: 'two instances and a worker',
    async run() {
      if (!isBuilt()) await build();
      await onServer(server.url, (client) => client.query(`create database ${database}`));
      return runWalks(env, ['--project=fleet', '--project=script-off', 'scale', 'main-job']);
    },
  },
]);
server.stop();
finish(counts);
