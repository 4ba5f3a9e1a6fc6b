import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const marker = '.next/built-from';

// Everything that ends up in the pages. Tests, demo data and commands do not.
const sources = [
  ...['app', 'assets', 'emails', 'lib', 'public', 'prisma/schema'],
  ...[
    'instrumentation.ts',
    'next.config.ts',
    'package-lock.json',
    'postcss.config.mjs',
    'proxy.ts',
    'tsconfig.json',
  ],
];

const notInPages = [path.join('lib', 'commands'), path.join('lib', 'db', 'generated')];

/** True when the pages built last were built from the very files that are here now. */
export function isBuilt(): boolean {
  return existsSync('.next/BUILD_ID') && existsSync(marker) && readFileSync(marker, 'utf8') === hashSources();
}

/** Builds the pages; rejects with the builder's own words when it fails or is stopped through `signal`. */
export async function build(signal?: AbortSignal): Promise<void> {
  const mark = hashSources();
  const child = spawn(process.execPath, ['node_modules/next/dist/bin/next', 'build'], {
    // Pages are made at each request, so the build needs neither database nor clock, and must not depend on them.
    env: {
      ...process.env,
      NODE_ENV: 'production',
      NEXT_TELEMETRY_DISABLED: '1',
      DATABASE_URL: '',
      CLOCK_FILE: '',
      // Asks for no setting of a live workshop.
      DEMO: 'on',
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  signal?.addEventListener('abort', () => child.kill('SIGTERM'));
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (text: Buffer) => {
      said += text;
    });
  }
  const code = await new Promise((resolve) => child.on('close', resolve));
  if (code !== 0) throw new Error(`The pages could not be built:\n${said}`);
  writeFileSync(marker, mark);
}

function hashSources(): string {
  const hash = createHash('sha256').update(process.version);
  for (const file of sources.flatMap(filesOf)) hash.update(file).update('\0').update(readFileSync(file));
  return hash.digest('hex');
}

function filesOf(source: string): string[] {
  if (!existsSync(source)) return [];
  if (statSync(source).isFile()) return [source];
  return readdirSync(source, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name))
    .filter((file) => !notInPages.some((folder) => file.startsWith(folder)))
    .sort();
}
