import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { actions } from '@/e2e/world/actions';
import { isPlainMove, PLAIN_MOVES } from '@/lib/jobs/move';
import { MOVES } from '@/lib/jobs/rules/stages';

type Found = { action: string; bound: string[]; body: string };

const sources = ['app', 'lib', 'emails'].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file) && !file.startsWith('db/generated'))
    .map((file) => ({ file: `${folder}/${file}`, text: readFileSync(`${folder}/${file}`, 'utf8') })),
);
const actionFiles = sources.filter(({ text }) => /^\s*['"]use server['"];/m.test(text));
const found = actionFiles.flatMap(({ file, text }) => actionsOf(file, text));

/** The exported functions of a file whose every export a browser may call, with what a page binds to each. */
function actionsOf(file: string, text: string): Found[] {
  const address = `/${file
    .split('/')
    .slice(1)
    .filter((folder) => !/^\(.*\)$/.test(folder))
    .join('/')}`;
  const actions =
    /^export const (\w+): FormAction(?:<\s*\[([^\]]*)\][^=]*>)? = (async \([^)]*\) =>[\s\S]*?)(?=\n[^\s})]|$(?!\n))/gm;
  return [...text.matchAll(actions)].map(([, name = '', bound = '', body = '']) => ({
    action: `${address} ${name}`,
    bound: [...bound.matchAll(/(\w+):/g)].map(([, each = '']) => each),
    body,
  }));
}

describe('the table of actions', () => {
  test('has a row for every function that a browser may call, and none for another', () => {
    expect(found.length).toBeGreaterThan(80);
    expect([...new Set(actions.map(({ action }) => action))].sort()).toEqual(
      found.map(({ action }) => action).sort(),
    );
  });

  test('misses none that is written in another way', () => {
    for (const { file, text } of actionFiles) {
      expect(text, `${file} begins with the mark of its actions`).toMatch(/^'use server';\n/);
      const exported = [...text.matchAll(/^export (?!type )/gm)];
      expect(exported, `${file} exports actions alone`).toHaveLength(actionsOf(file, text).length);
    }
  });

  test('tries every move of the job sheet', () => {
    const tried = actions.filter(({ action }) => action.endsWith('/jobs/[number]/actions.ts move'));
    expect(tried.map(({ form }) => form?.['move']).sort()).toEqual([...PLAIN_MOVES].sort());
    // What the table alone cannot decide is not to be had by naming it to the plain move.
    const others = MOVES.map(({ key }) => key).filter((key) => !isPlainMove(key));
    expect(others).toEqual(expect.arrayContaining(['arrive', 'approve', 'withdraw', 'dispatch', 'lapse']));
    expect(others.length + PLAIN_MOVES.length).toBe(MOVES.length);
  });

  test.each(found)('$action is tried with as much as its page binds', ({ action, bound }) => {
    const rows = actions.filter((row) => row.action === action);
    expect(rows).not.toEqual([]);
    for (const row of rows) {
      expect(row.may.length).toBeGreaterThan(0);
      expect(row.bound?.length ?? 0).toBe(bound.length);
    }
  });

  test.each(
    actions.filter(({ may }) => may.some((who) => ['draft', 'number', 'private link'].includes(who))),
  )('$action is tried by a stranger too', ({ strangers }) =>
    expect(strangers?.hold.length).toBeGreaterThan(1),
  );

  test('is closed in the workshop but for the ways in and out', () => {
    const open = actions.filter(
      ({ action, may }) => action.startsWith('/workshop') && may.includes('anyone'),
    );
    expect(open.map(({ action }) => action)).toEqual([
      '/workshop/sign-in/actions.ts signInAction',
      '/workshop/second-step/actions.ts secondStepAction',
      '/workshop/account/actions.ts signOutAction',
    ]);
  });
});

describe('what an action is bound to', () => {
  const withParts = found.filter(({ bound }) => bound.length > 0);

  // Each of these asks onlyPlain of the number or link that it is given.
  const kit = /\bon(Job|Claim|Quote|Link|QuoteLink)\(/;

  test.each(withParts)('$action lets nothing but texts and numbers through', ({ bound, body }) => {
    const checked = [...body.matchAll(/\bonly(?:Plain|PlainOrNew|Counts)\(([^)]*)\)/g)]
      .map(([, names = '']) => names)
      .join(' ');
    for (const name of bound) {
      const byKit = ['number', 'token'].includes(name) && kit.test(body);
      if (!byKit) expect(checked).toMatch(new RegExp(`\\b${name}\\b`));
    }
  });

  test.each(['Job', 'Claim', 'Quote', 'Link', 'QuoteLink'])(
    'on%s asks the same of what it is given',
    (name) => {
      const file = sources.find(
        ({ text }) =>
          text.includes(`export async function on${name}<`) ||
          text.includes(`export async function on${name}(`),
      );
      expect(file?.text).toMatch(/\bonlyPlain\((o\.)?(number|token)\);/);
    },
  );
});
