import { dictionary } from '@zxcvbn-ts/language-common';
import { expect, test } from 'vitest';
import { isEasyToGuess } from '@/lib/people/easy-password';
import { demoOwner } from '@/lib/people/first-owner';
import { PASSWORD_MAX, PASSWORD_MIN } from '@/lib/people/rules/passwords';
import { DEMO_STAFF } from '@/prisma/demo/staff';

const commonest = dictionary['passwords-common'].filter((entry) => typeof entry === 'string');

// ASVS 5.0 6.2.4: at least the 3000 commonest that the house's own rule, twelve characters, would let through.
test('each fourth of the common passwords of the list that are long enough is refused', async () => {
  const longEnough = commonest.filter((password) => password.length >= PASSWORD_MIN);
  expect(longEnough.length).toBeGreaterThan(200);
  const through: string[] = [];
  for (const password of longEnough.filter((_, at) => at % 4 === 0))
    if (!(await isEasyToGuess(password))) through.push(password);
  expect(through).toEqual([]);
});

test.each([
  ['by the digits in a row', (password: string) => `${password}12345678`],
  ['twice', (password: string) => `${password}${password}`],
])('so is each fiftieth of the 3000 commonest of all, made long enough %s', async (_, made) => {
  const tried = commonest
    .slice(0, 3000)
    .filter((_, at) => at % 50 === 0)
    .map(made)
    .filter((password) => password.length >= PASSWORD_MIN);
  expect(tried.length).toBeGreaterThan(40);
  const through: string[] = [];
  for (const password of tried) if (!(await isEasyToGuess(password))) through.push(password);
  expect(through).toEqual([]);
});

test.each([
  ['digits for letters', 'P@ssw0rd2026!'],
  ['a row of keys', 'qwertyuiop12'],
  ['two rows at once', '1q2w3e4r5t6y'],
  ['backwards', 'drowssap1234'],
  ['an alphabet', 'abcdefghijkl'],
])('%s is refused', async (_, password) => expect(await isEasyToGuess(password)).toBe(true));

test('words of the person are not enough with a number behind them', async () => {
  expect(await isEasyToGuess('sandmouth1999', ['Sandmouth'])).toBe(true);
});

test.each([
  ...['lantern ferry solder', '829104736150', 'морской-фонарь-42'],
  ...[demoOwner, ...DEMO_STAFF].map(({ password }) => password),
])('%s is taken', async (password) => expect(await isEasyToGuess(password)).toBe(false));

test('the longest password there may be is judged within a second', async () => {
  const began = process.cpuUsage();
  await isEasyToGuess('aB3$'.repeat(PASSWORD_MAX / 4));
  const { user } = process.cpuUsage(began);
  expect(user).toBeLessThan(1_000_000);
});
