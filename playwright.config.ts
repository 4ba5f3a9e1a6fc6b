import { defineConfig } from '@playwright/test';
import { chromiumArguments, findChromium } from '@/lib/commands/chromium';
import { isLocalDatabase } from '@/lib/db/server';
import { fleetSettings, isFleet } from './e2e/world/fleet';
import { openingTime, place, setClock } from './e2e/world/place';

const databaseUrl = process.env['E2E_DATABASE_URL'];
if (databaseUrl && !isLocalDatabase(databaseUrl)) {
  throw new Error('E2E_DATABASE_URL is not on this machine: the walks fill the database they use');
}
const chromium = findChromium();
const phone = { width: 360, height: 740 };
// Made on a phone, with script and without, and not wide again; what asks every address chooses its own widths.
const onPhones =
  /(main-job|asked-price|at-the-bench|catalogue-file|walk-in|withdrawal|warranty.*|lost-certificate|bad-\w+)\.spec\.ts$/;
// What script adds to a form is walked elsewhere; here it would repeat four minutes. E2E_WALKS=all walks them with script too.
const withoutScript =
  process.env['E2E_WALKS'] === 'all'
    ? /^$/
    : /(asked-price|walk-in|bad-numbers|lost-certificate|warranty-ruling)\.spec\.ts$/;
const once = /(access|axe|encrypted|headers|returns)\.spec\.ts$/;
// Needs more than one instance.
const scale = /scale\.spec\.ts$/;
const program = isFleet ? 'scale/fleet.ts' : 'start.ts';
// A day of the workshop's own staff, whose pages have script and choose their width: once is enough.
const aDay = /bench-day\.spec\.ts$/;

// Once, by the process that starts the app; the others find the clock where the walks have moved it.
if (!process.env['TEST_WORKER_INDEX']) setClock(openingTime);

export default defineConfig({
  testDir: 'e2e',
  outputDir: 'test-results/walks',
  reporter: [['list'], ['json', { outputFile: 'test-results/walks.json' }]],
  forbidOnly: Boolean(process.env['CI']),
  workers: 1,
  retries: 0,
  // A walk is a whole job, from the price list to a claim, on a machine that may be busy.
  timeout: 180_000,
  // A busy machine draws a certificate in seconds, not in a moment.
  expect: { timeout: 15_000 },
  use: {
    baseURL: place.origin,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    // A click waits for the next frame; one that never comes must not eat a walk's whole time.
    actionTimeout: 60_000,
    // Without pictures of every frame: filming each page slows the walks, and once a page stopped drawing while it was filmed.
    trace: { mode: 'retain-on-failure', screenshots: false },
    launchOptions: { args: chromiumArguments, ...(chromium && { executablePath: chromium }) },
  },
  projects: [
    {
      name: 'script-off',
      testIgnore: [once, aDay, scale],
      use: { javaScriptEnabled: false, viewport: phone },
    },
    { name: 'script-on', testIgnore: [once, scale, withoutScript], use: { viewport: phone } },
    { name: 'wide', testIgnore: [onPhones, aDay, scale], use: { viewport: { width: 1280, height: 800 } } },
    ...(isFleet ? [{ name: 'fleet', testMatch: scale }] : []),
  ],
  webServer: [
    {
      command: 'node --import tsx e2e/world/smtp-catcher.ts',
      url: place.mailbox,
      stdout: 'pipe',
      gracefulShutdown: { signal: 'SIGTERM', timeout: 2000 },
    },
    {
      command: `node --conditions=react-server --import tsx lib/commands/${program}`,
      // A balancer keeps /ready for itself; it opens when its instances are.
      url: `${place.origin}${isFleet ? '/health' : '/ready'}`,
      // Longer than a first start that has to build, on a busy machine.
      timeout: 300_000,
      stdout: 'pipe',
      // The launcher lets the app finish first; it takes at most 20 s for that.
      gracefulShutdown: { signal: 'SIGTERM', timeout: 25_000 },
      env: {
        DATABASE_URL: databaseUrl ?? '',
        DATA_DIR: place.dataDir,
        PORT: String(place.port),
        APP_URL: place.origin,
        CLOCK_FILE: place.clockFile,
        SMTP_URL: `smtp://127.0.0.1:${place.smtpPort}`,
        MAIL_FROM: 'Quay & Alder <workshop@quayandalder.example.org>',
        DEMO: 'on',
        JOBS: 'on',
        LOG_LEVEL: 'warn',
        ...(isFleet && fleetSettings),
      },
    },
  ],
});
