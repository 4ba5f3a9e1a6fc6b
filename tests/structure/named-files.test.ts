import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

const folders = ['app', 'lib', 'e2e', 'tests', 'emails', 'prisma', 'deploy', 'docs'];
const all = folders.flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => path.join(folder, name)),
);

/** What stands between backquotes and looks like a file or a folder of ours: with a slash, or an ending of ours. */
function namedIn(text: string): string[] {
  return [...text.matchAll(/`([^`\s]+)`/g)]
    .map(([, name = '']) => name)
    .filter((name) => /^(app|lib|e2e|tests|emails|prisma|docs)\//.test(name) || /\.(tsx?|md)$/.test(name))
    .filter((name) => !/[*<]|^\./.test(name));
}

// A row of the table is worth as much as the file it names. Short names follow a longer one of the same row.
test.each(['docs/asvs.md', 'SECURITY.md', 'DEVELOPERS.md'])(
  '%s names no file that is not there',
  (document) => {
    const named = namedIn(readFileSync(document, 'utf8'));
    expect(named.length).toBeGreaterThan(10);
    const missing = named.filter(
      (name) => !existsSync(name) && !all.some((file) => file.endsWith(`/${name}`)),
    );
    expect(missing).toEqual([]);
  },
);
