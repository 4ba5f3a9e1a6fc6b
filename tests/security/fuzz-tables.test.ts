import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { forbiddenChanges, TABLES } from '@/lib/commands/fuzz/kept';

const SCHEMA = join(import.meta.dirname, '../../prisma/schema');
const tables = readdirSync(SCHEMA).flatMap((file) =>
  [...readFileSync(join(SCHEMA, file), 'utf8').matchAll(/@@map\("(\w+)"\)/g)].map(([, name]) => name),
);

/** What the hostile run makes of one table having changed while this caller asked. */
const isTold = (caller: string, table: string) =>
  forbiddenChanges(caller, new Map([[table, '1 a']]), new Map([[table, '1 b']])).length === 1;

test('every table of the schema stands once in the lists of who may write to it', () => {
  expect(Object.values(TABLES).flat().sort()).toEqual(tables.toSorted());
});

test.each([
  ['front', 'part_order_move'],
  ['front', 'part_use'],
  ['front', 'check_entry'],
  ['front', 'carrier'],
  ['bench', 'carrier'],
  ['bench', 'payment'],
  ['nobody', 'part_order_move'],
  ['nobody', 'payment'],
])('the hostile run tells that %s has changed %s', (caller, table) => {
  expect(isTold(caller, table)).toBe(true);
});

test.each([
  ['front', 'payment'],
  // By an answer that was told: a yes, a contest, a no to a price that had lapsed.
  ...['awaited_part', 'part_not_needed', 'sheet_beside', 'unit_watch', 'line_watch'].flatMap((table) => [
    ['front', table],
    ['nobody', table],
  ]),
  ['bench', 'part_order_move'],
  ['owner', 'carrier'],
  ['nobody', 'claim'],
])('and not so of %s and %s', (caller, table) => {
  expect(isTold(caller ?? '', table ?? '')).toBe(false);
});
