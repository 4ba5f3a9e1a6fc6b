import { expect, test } from 'vitest';
import { byWorry } from '@/lib/returns/rules/by-worry';
import type { RepairWorth } from '@/lib/returns/rules/repair-worth';

type Row = { name: string; carries: RepairWorth['carries']; returned: number; units: number };

const row = (name: string, carries: Row['carries'], returned: number, units: number): Row => ({
  name,
  carries,
  returned,
  units,
});

const names = (rows: readonly Row[]) => rows.map(({ name }) => name);

test('prices that lose money come first, then what came back, then what went out most', () => {
  const { told, quiet } = byWorry(
    [
      row('sound', 'yes', 0, 40),
      row('one back', 'too-few', 1, 1),
      row('in doubt', 'in-doubt', 2, 30),
      row('loses', 'no', 3, 23),
      row('six back', 'too-few', 6, 28),
      row('below cost', 'below-cost', 0, 15),
      row('sound and long', 'yes', 0, 60),
    ],
    (each) => each,
  );
  expect(names(told)).toEqual([
    'below cost',
    'loses',
    'in doubt',
    'six back',
    'one back',
    'sound and long',
    'sound',
  ]);
  expect(quiet).toEqual([]);
});

test('a repair is apart only while nothing came back and nothing can be said of its price', () => {
  const { told, quiet } = byWorry(
    [
      row('young', 'too-few', 0, 2),
      row('without a term', 'unknown', 0, 9),
      row('without a term, back', 'unknown', 1, 9),
      row('sound', 'yes', 0, 40),
    ],
    (each) => each,
  );
  expect(names(quiet)).toEqual(['young', 'without a term']);
  expect(names(told)).toEqual(['without a term, back', 'sound']);
});

test('what is equal keeps the order of the catalogue', () => {
  const { told } = byWorry([row('b', 'yes', 1, 4), row('a', 'yes', 1, 4)], (each) => each);
  expect(names(told)).toEqual(['b', 'a']);
});
