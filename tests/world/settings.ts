/** First of the setup files: settings stand before a test file imports anything that reads them. */
import path from 'node:path';
import { inject } from 'vitest';
import { embeddedUrl } from '@/lib/db/embedded-place';
import { databaseUrl } from '@/lib/db/server';

const world = inject('world');
export const worker = `w${process.env['VITEST_POOL_ID'] ?? '1'}`;
export const workerFolder = path.join(world.folder, worker);

process.env['DATABASE_URL'] =
  world.kind === 'server' ? databaseUrl(world.url, `${world.run}_${worker}`) : embeddedUrl(workerFolder);
process.env['DATA_DIR'] = workerFolder;
process.env['AUTH_SECRET'] = 'only for tests, only for tests, only for tests';
process.env['JOBS'] = 'off';
process.env['LOG_LEVEL'] = 'warn';
process.env['DEMO'] = 'on';
for (const name of ['APP_URL', 'SMTP_URL', 'CLOCK_FILE', 'FILES', 'HOST', 'PORT']) delete process.env[name];
