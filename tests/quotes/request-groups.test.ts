import { expect, test } from 'vitest';
import { groupOf, REQUEST_GROUPS, stretchesOf } from '@/lib/quotes/rules/request-groups';
import { movesFrom, REQUEST_STATES } from '@/lib/quotes/rules/request-states';

test('every state of a quote is in one group', () => {
  const held = REQUEST_GROUPS.flatMap(({ states }) => [...states]);
  expect([...held].sort()).toEqual([...REQUEST_STATES].sort());
  for (const { key, states } of REQUEST_GROUPS)
    for (const state of states) expect(groupOf(state), state).toBe(key);
});

test('what waits on us can be moved by us, and what waits on the customer by the customer', () => {
  for (const state of REQUEST_STATES) {
    if (groupOf(state) === 'us') expect(movesFrom(state, 'staff')).not.toEqual([]);
    if (groupOf(state) === 'customer') expect(movesFrom(state, 'customer')).not.toEqual([]);
    // A no that was a slip can become a yes; nothing else that ended is the customer’s to move.
    if (groupOf(state) === 'ended' && state !== 'declined') expect(movesFrom(state, 'customer')).toEqual([]);
  }
});

const sizes = [
  ['us', 3],
  ['customer', 30],
  ['to-book', 0],
  ['ended', 4],
] as const;

test.each([
  {
    name: 'the first page holds one group and the beginning of the next',
    page: 1,
    stretches: [
      { group: 'us', skip: 0, take: 3 },
      { group: 'customer', skip: 0, take: 22 },
    ],
  },
  {
    name: 'the second goes on where the first ended',
    page: 2,
    stretches: [
      { group: 'customer', skip: 22, take: 8 },
      { group: 'ended', skip: 0, take: 4 },
    ],
  },
  { name: 'a page past the end holds nothing', page: 3, stretches: [] },
])('$name', ({ page, stretches }) => {
  expect(stretchesOf(sizes, { page, size: 25 })).toEqual(stretches);
});

test('the pages together hold every row once, whatever their size', () => {
  for (const size of [1, 2, 7, 25, 100]) {
    const seen = new Map<string, number[]>();
    for (let page = 1; page <= 40; page += 1)
      for (const { group, skip, take } of stretchesOf(sizes, { page, size }))
        seen.set(group, [...(seen.get(group) ?? []), ...Array.from({ length: take }, (_, at) => skip + at)]);
    for (const [group, count] of sizes)
      expect(seen.get(group) ?? [], `${group} by ${size}`).toEqual(
        Array.from({ length: count }, (_, at) => at),
      );
  }
});
