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

const CODE = ['app', 'lib', 'tests', 'e2e', 'emails', 'prisma'];

/** Whole paths of our files in the comments of a source file; a documentation page of somebody else may have any name. */
function namedInComments(text: string): string[] {
  const comments = text
    .split('\n')
    .flatMap((line) => line.match(/(?:^\s*(?:\/?\*+|\/\/)|\s\/\/\s).*$/) ?? []);
  const ours = new RegExp(`(?<![\\w./@-])(?:${CODE.join('|')})/[\\w./[\\]()-]*\\.tsx?\\b`, 'g');
  return comments.flatMap((comment) => comment.match(ours) ?? []);
}

test('no comment names a file that is not there', () => {
  const sources = all.filter((file) => /\.tsx?$/.test(file) && !file.includes('/generated/'));
  const named = sources.flatMap((file) =>
    namedInComments(readFileSync(file, 'utf8')).map((name) => ({ file, name })),
  );
  expect(named.length).toBeGreaterThan(40);
  expect(named.filter(({ name }) => !existsSync(name))).toEqual([]);
});
