/** `npm run shots [-- NAME…]`: photographs the pages of e2e/world/pages.ts into shots/, on a phone and wide, light and dark. */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { type Browser, type BrowserContext, chromium } from 'playwright';
import { type PageToShow, pages } from '@/e2e/world/pages';
import { chromiumArguments, needChromium } from './chromium';

const port = process.env['SHOTS_PORT'] ?? '3350';
const origin = `http://127.0.0.1:${port}`;
const dataDir = mkdtempSync(path.join(tmpdir(), 'mendpost-shots-'));
Object.assign(process.env, {
  DATA_DIR: dataDir,
  PORT: port,
  APP_URL: origin,
  DATABASE_URL: '',
  DEMO: 'on',
  JOBS: 'off',
});

const wanted = process.argv.slice(2);
const chosen =
  wanted.length === 0 ? pages : pages.filter(({ name }) => wanted.some((word) => name.includes(word)));

const app = spawn(
  process.execPath,
  ['--conditions=react-server', '--import', 'tsx', 'lib/commands/start.ts'],
  {
    stdio: ['ignore', 'inherit', 'inherit'],
  },
);
const ended = new Promise((resolve) => app.on('exit', resolve));
let hasFailed = false;
try {
  await untilReady();
  const browser = await chromium.launch({ executablePath: needChromium(), args: chromiumArguments });
  for (const width of [360, 1280]) {
    for (const colorScheme of ['light', 'dark'] as const) await photograph(browser, width, colorScheme);
  }
  await browser.close();
} catch (error) {
  hasFailed = true;
  console.error(error);
} finally {
  await (await import('@/lib/db/client')).disconnect();
  app.kill('SIGTERM');
  await ended;
  rmSync(dataDir, { recursive: true, force: true });
}
process.exit(hasFailed ? 1 : 0);

async function photograph(browser: Browser, width: number, colorScheme: 'light' | 'dark') {
  const folder = path.join('shots', `${width}-${colorScheme}`);
  mkdirSync(folder, { recursive: true });
  const settings = { baseURL: origin, viewport: { width, height: width < 500 ? 740 : 800 }, colorScheme };
  const contexts = {
    visitor: await browser.newContext(settings),
    owner: await signedIn(await browser.newContext(settings)),
  };
  for (const page of chosen) await shoot(page, contexts[page.as], folder);
  for (const context of Object.values(contexts)) await context.close();
}

async function shoot({ name, path: where }: PageToShow, context: BrowserContext, folder: string) {
  const { fillPlaces } = await import('./shot-places');
  const page = await context.newPage();
  try {
    await page.goto(await fillPlaces(where));
    await page.screenshot({ path: path.join(folder, `${name}.png`), fullPage: true });
  } catch (error) {
    hasFailed = true;
    console.error(`${name}: ${error instanceof Error ? error.message : error}`);
  }
  await page.close();
}

async function signedIn(context: BrowserContext): Promise<BrowserContext> {
  const { demoOwner } = await import('@/lib/people/first-owner');
  const page = await context.newPage();
  await page.goto('/workshop/sign-in');
  await page.getByLabel('E-mail address').fill(demoOwner.email);
  await page.getByLabel('Password').fill(demoOwner.password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((url) => !url.pathname.endsWith('/sign-in'));
  await page.close();
  return context;
}

async function untilReady(): Promise<void> {
  for (;;) {
    if (app.exitCode !== null) throw new Error('The app did not start.');
    if ((await fetch(`${origin}/ready`).catch(() => undefined))?.ok) return;
    await wait(200);
  }
}
