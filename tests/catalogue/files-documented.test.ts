import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { CAUTION_KEYS } from '@/lib/bench/rules/cautions';
import { CHECK_KINDS } from '@/lib/bench/rules/checks';
import { MOST_ROWS } from '@/lib/catalogue/import-file';
import { CHECK_LAYOUT } from '@/lib/catalogue/rules/check-file';
import { listLayout } from '@/lib/catalogue/rules/list-columns';
import { LIMITS } from '@/lib/catalogue/rules/list-limits';
import { POLICY_LAYOUT } from '@/lib/catalogue/rules/policy-file';
import { MOST_MEGABYTES } from '@/lib/catalogue/uploaded-list';
import { HELD_RULES, MOST_GRACE_DAYS, START_EVENTS } from '@/lib/warranty/rules/terms';

const text = readFileSync('docs/catalogue-files.md', 'utf8');
const part = (title: string) => text.split(`\n## ${title}\n`)[1]?.split('\n## ')[0] ?? '';
const headsOf = (title: string) =>
  [...part(title).matchAll(/^\| (.+?) \|/gm)]
    .flatMap(([, cell = '']) => cell.split(/, or |, /))
    .filter((head) => head !== 'heading' && !head.startsWith('---'));

const catalogue = listLayout({ currency: 'GBP', pricesIncludeTax: true }).map(({ head }) => head);

test.each([
  ['Catalogue', [...catalogue, 'Price without tax']],
  ['Check sheets', CHECK_LAYOUT.map(({ head }) => head)],
  ['Policies', POLICY_LAYOUT.map(({ head }) => head)],
])('every heading of %s is told, and no other', (title, heads) => {
  expect(headsOf(title).sort()).toEqual([...heads].sort());
});

test('every word a cell may hold is told, and every limit', () => {
  for (const word of [...CHECK_KINDS, ...CAUTION_KEYS]) expect(part('Check sheets')).toContain(word);
  for (const word of [...START_EVENTS, ...HELD_RULES]) expect(part('Policies')).toContain(word);
  expect(text).toContain(`${MOST_ROWS.toLocaleString('en-GB')} rows and ${MOST_MEGABYTES} MB`);
  expect(part('Check sheets')).toContain(`up to ${LIMITS.check} characters`);
  expect(part('Check sheets')).toContain(`up to ${LIMITS.line} characters`);
  expect(part('Check sheets')).toContain(`up to ${LIMITS.answers} that pass and ${LIMITS.answers} that fail`);
  expect(part('Check sheets')).toContain(`up to ${LIMITS.checks} checks`);
  expect(part('Policies')).toContain(`0 to ${MOST_GRACE_DAYS}`);
});
