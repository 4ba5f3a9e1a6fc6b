import { describe, expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { openPieces, type PiecesFor, piecesFor, type Waiting } from '@/lib/jobs/rules/pieces-for';

const soon = day('2026-12-03');
const later = day('2026-12-20');

/** Promised in this order; asked is about 'me'. */
const before: Waiting = { id: 'before', isOnBench: false, promisedOn: day('2026-12-01'), open: 1 };
const me: Waiting = { id: 'me', isOnBench: false, promisedOn: day('2026-12-05'), open: 1 };
const after: Waiting = { id: 'after', isOnBench: false, promisedOn: day('2026-12-09'), open: 5 };
const ordered = (quantity: number, expectedOn: typeof soon | null, came = 0) => ({
  quantity,
  came,
  expectedOn,
});

type Supply = Parameters<typeof piecesFor>[1];

describe('the pieces that are for a job', () => {
  test.each<[string, Partial<Supply>, Partial<PiecesFor>]>([
    ['it waits alone for one in stock', { inStock: 1 }, { here: 1, isOnOrder: false, comesOn: null }],
    [
      'the one in stock is for a job before it',
      { waiting: [me, before], inStock: 1 },
      { here: 0, isOnOrder: false },
    ],
    ['who comes after it takes nothing from it', { waiting: [after, me], inStock: 1 }, { here: 1 }],
    [
      'one on the bench comes before it, whatever its promise',
      { waiting: [me, { ...after, isOnBench: true, open: 1 }], inStock: 1 },
      { here: 0 },
    ],
    [
      'the same on the bench itself',
      { waiting: [{ ...me, isOnBench: true }, before], inStock: 1 },
      { here: 1 },
    ],
    [
      'without a promise it comes after one that has one',
      { waiting: [{ ...me, promisedOn: null }, after], inStock: 5 },
      { here: 0 },
    ],
    [
      'one without a promise comes after it',
      { waiting: [{ ...before, promisedOn: null }, me], inStock: 1 },
      { here: 1 },
    ],
    [
      'one that has taken its own is not before it',
      { waiting: [{ ...before, open: 0 }, me], inStock: 1 },
      { here: 1 },
    ],
    [
      'the first order is for the job before it',
      { waiting: [before, me], orders: [ordered(1, later), ordered(1, soon)] },
      { isOnOrder: true, comesOn: later },
    ],
    [
      'one order is enough for both',
      { waiting: [before, me], orders: [ordered(2, soon)] },
      { comesOn: soon },
    ],
    [
      'what has come of an order comes no more',
      { waiting: [before, me], orders: [ordered(2, soon, 1), ordered(1, later)] },
      { comesOn: later },
    ],
    [
      'too few are ordered',
      { waiting: [{ ...me, open: 3 }], inStock: 1, orders: [ordered(1, soon)] },
      { open: 3, here: 1, isOnOrder: false, comesOn: null },
    ],
    [
      'the last of them comes on a day nobody said',
      { waiting: [{ ...me, open: 2 }], orders: [ordered(1, soon), ordered(1, null)] },
      { isOnOrder: true, comesOn: null },
    ],
  ])('%s', (_name, some, expected) => {
    expect(piecesFor('me', { waiting: [me], inStock: 0, orders: [], ...some })).toMatchObject(expected);
  });

  test('two of one promise are both given theirs, one before the other', () => {
    const twin = { ...me, id: 'twin' };
    const here = (id: string) => piecesFor(id, { waiting: [twin, me], inStock: 1, orders: [] }).here;
    expect([here('me'), here('twin')]).toEqual([1, 0]);
  });

  const at = (minute: number) => new Date(Date.UTC(2026, 10, 25, 9, minute));
  test.each([
    ['nothing taken', [], 2],
    ['one taken before it waited', [{ quantity: 1, at: at(0) }], 2],
    ['one taken since', [{ quantity: 1, at: at(2) }], 1],
    ['more taken than it waited for', [{ quantity: 3, at: at(2) }], 0],
  ])('it still waits for: %s', (_name, uses, open) => {
    expect(openPieces(2, uses, at(1))).toBe(open);
  });
});
