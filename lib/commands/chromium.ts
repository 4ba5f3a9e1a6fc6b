import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

/** What a headless Chromium needs to run anywhere, also as root in a container, and to keep to itself. */
export const chromiumArguments = [
  ...['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
  ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
];

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const applications = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** The browser for tests: CHROMIUM_PATH, else the system's, else the one Playwright keeps; undefined without any. */
export function findChromium(): string | undefined {
  const chosen = process.env['CHROMIUM_PATH'];
  if (chosen) return chosen;
  const folders = (process.env['PATH'] ?? '').split(path.delimiter).filter(Boolean);
  const system = names.flatMap((name) => folders.map((folder) => path.join(folder, name)));
  return [...system, ...applications, playwrightsOwn()].find(isProgram);
}

/** Finds the browser, or installs one through apt where this user may; else throws one line that says what to run. */
export function needChromium(): string {
  const found = findChromium();
  if (found) return found;
  const isRoot = process.getuid?.() === 0;
  if (isRoot && existsSync('/usr/bin/apt-get')) {
    console.log('No Chromium here: installing the one of the system, through apt-get.');
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit', env });
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], {
      stdio: 'inherit',
      env,
    });
  }
  const installed = findChromium();
  if (installed) return installed;
  throw new Error(
    'No Chromium for the browser tests: run `npx playwright install chromium`, or set CHROMIUM_PATH.',
  );
}

function playwrightsOwn(): string {
  const { chromium } = createRequire(import.meta.url)('playwright');
  return String(chromium.executablePath());
}

function isProgram(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
