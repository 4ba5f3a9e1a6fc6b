import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, test } from 'vitest';

type Planted = [name: string, place: string, line: string];

const refused: Planted[] = [
  ['a rule that reads the database', 'lib/jobs/rules/x.ts', "import { db } from '@/lib/db/client';"],
  ['a rule that asks a use case', 'lib/jobs/rules/x.ts', "import { book } from '@/lib/jobs/book';"],
  [
    'a rule that reaches its room by a relative path',
    'lib/jobs/rules/x.ts',
    "import { a } from '../records';",
  ],
  ['a rule that reaches another room by a relative path', 'lib/jobs/rules/x.ts', "import '../../db/client';"],
  ['a rule that knows the framework', 'lib/quotes/rules/x.ts', "import type { Route } from 'next';"],
  ['a rule that reads the clock', 'lib/promise/rules/x.ts', "import { now } from '@/lib/clock';"],
  ['a rule that reads files', 'lib/bench/rules/x.ts', "import { readFile } from 'node:fs/promises';"],
  ['money that knows jobs', 'lib/money/x.ts', "import { stages } from '@/lib/jobs/rules/stages';"],
  ['numbers that know money', 'lib/numbers/x.ts', "import { a } from '../money/amount';"],
  ['statistics that know cover', 'lib/statistics/x.ts', "import { a } from '@/lib/warranty/rules/cover';"],
  ['a use case that knows a page', 'lib/jobs/x.ts', "import { Page } from '@/app/workshop/page';"],
  ['a use case that redirects', 'lib/jobs/x.ts', "import { redirect } from 'next/navigation';"],
  ['a use case that draws', 'lib/jobs/x.ts', "import { drawSlip } from '@/lib/documents/slip';"],
  ['a use case that calls one of another room', 'lib/quotes/x.ts', "import { book } from '@/lib/jobs/book';"],
  ['a document that reads the database', 'lib/documents/x.ts', "import { db } from '@/lib/db/client';"],
  ['a document that asks a room', 'lib/documents/x.ts', "import { read } from '@/lib/jobs/records';"],
  ['the database room that knows jobs', 'lib/db/x.ts', "import { read } from '@/lib/jobs/records';"],
  ['a message that asks a room', 'emails/x.tsx', "import { read } from '@/lib/jobs/records';"],
  ['a page that queries', 'app/workshop/page.tsx', "import { db } from '@/lib/db/client';"],
  ['a page that queries lazily', 'app/workshop/page.tsx', "const { db } = await import('@/lib/db/client');"],
  ['a page that loads demo data', 'app/page.tsx', "import { seedDemo } from '@/prisma/demo/seed';"],
  ['a part of the screen that asks a room', 'app/ui/x.tsx', "import { read } from '@/lib/jobs/records';"],
  ['a walk that reaches inside', 'e2e/x.spec.ts', "import { book } from '@/lib/jobs/book';"],
];

const welcome: Planted[] = [
  ['a rule that uses other rules', 'lib/jobs/rules/x.ts', "import { a } from '@/lib/warranty/rules/cover';"],
  ['a rule that counts days', 'lib/promise/rules/x.ts', "import { addDays } from '@/lib/calendar/day';"],
  ['a rule that counts shares', 'lib/returns/rules/x.ts', "import { holm } from '@/lib/statistics/holm';"],
  ['a use case with its own files', 'lib/jobs/x.ts', "import { read } from './records';"],
  ['a use case that reads another room', 'lib/jobs/x.ts', "import { read } from '@/lib/warranty/records';"],
  ['a use case that queues mail', 'lib/jobs/x.ts', "import { queueMail } from '@/lib/mail/queue';"],
  ['a page that asks a verb', 'app/page.tsx', "import { book } from '@/lib/jobs/book';"],
  ['a page that shows a part', 'app/page.tsx', "import { Docket } from '@/app/ui/docket';"],
];

const copy = mkdtempSync(path.join(tmpdir(), 'mendpost-rooms-'));
cpSync('biome.json', path.join(copy, 'biome.json'));
afterAll(() => rmSync(copy, { recursive: true }));

// Every file gets a name of its own, so that one run of the linter judges them all.
const planted = [...refused, ...welcome].map(([name, place, line], index) => {
  const file = place.replace(/(\.spec)?\.tsx?$/, (ending) => `-${index}${ending}`);
  mkdirSync(path.join(copy, path.dirname(file)), { recursive: true });
  writeFileSync(path.join(copy, file), `${line}\n`);
  return { name, file };
});
const run = spawnSync(
  path.resolve('node_modules/.bin/biome'),
  [
    'lint',
    '--only=style/noRestrictedImports',
    '--vcs-enabled=false',
    '--max-diagnostics=none',
    '--colors=off',
  ],
  { cwd: copy, encoding: 'utf8' },
);
const said = run.stdout + run.stderr;

function isRefused(name: string): boolean {
  const file = planted.find((each) => each.name === name)?.file ?? '';
  return said.split('\n').some((row) => row.startsWith(`${file}:`) && row.includes('noRestrictedImports'));
}

test('the linter has read every planted file', () => {
  expect(said).toMatch(new RegExp(`Checked ${planted.length + 1} files`));
});

test.each(refused)('lint refuses %s', (name) => {
  expect(isRefused(name)).toBe(true);
});

test.each(welcome)('lint lets %s pass', (name) => {
  expect(isRefused(name)).toBe(false);
});
