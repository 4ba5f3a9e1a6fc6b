import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { attemptKey } from '@/lib/people/caller-address';
import { forgetAttempts, forgetEndedWindows, limitAttempts, limitEach } from '@/lib/people/limit-attempts';
import { resetDatabase, useDatabase } from '@/tests/database';

useDatabase();
beforeEach(resetDatabase);

const start = new Date('2026-12-01T09:00:00Z');
const after = (seconds: number) => new Date(start.getTime() + seconds * 1000);
const limit = (now: Date) => ({ max: 5, windowSeconds: 60, now });

test('of fifty attempts that arrive together five pass', async () => {
  const answers = await Promise.all(Array.from({ length: 50 }, () => limitAttempts('crowd', limit(start))));
  expect(answers.filter((answer) => answer.allowed)).toHaveLength(5);
  expect(await db.attempt.findUnique({ where: { key: 'crowd' } })).toMatchObject({ count: 50 });
});

test('a refused attempt learns how long to wait', async () => {
  for (let i = 0; i < 5; i += 1) await limitAttempts('one', limit(start));
  expect(await limitAttempts('one', limit(after(20.4)))).toEqual({ allowed: false, waitSeconds: 40 });
});

test('attempts during the wait do not lengthen it', async () => {
  for (let i = 0; i < 20; i += 1) await limitAttempts('one', limit(after(i)));
  expect(await limitAttempts('one', limit(after(59)))).toEqual({ allowed: false, waitSeconds: 1 });
  expect(await limitAttempts('one', limit(after(60)))).toEqual({ allowed: true, waitSeconds: 0 });
});

test('keys are counted apart, and a forgotten key starts afresh', async () => {
  for (let i = 0; i < 6; i += 1) await limitAttempts('one', limit(start));
  expect((await limitAttempts('other', limit(start))).allowed).toBe(true);
  expect((await limitAttempts('one', limit(start))).allowed).toBe(false);
  await forgetAttempts('one');
  expect((await limitAttempts('one', limit(start))).allowed).toBe(true);
});

test('an attempt under two keys waits for the one that is spent, and is counted under both', async () => {
  const both = (now: Date) =>
    limitEach(
      [
        { key: 'wide', max: 9, windowSeconds: 600 },
        { key: 'narrow', max: 2, windowSeconds: 60 },
      ],
      now,
    );
  expect(await both(start)).toEqual({ allowed: true, waitSeconds: 0 });
  expect(await both(after(1))).toEqual({ allowed: true, waitSeconds: 0 });
  expect(await both(after(2))).toEqual({ allowed: false, waitSeconds: 58 });
  expect(await db.attempt.findUnique({ where: { key: 'wide' } })).toMatchObject({ count: 3 });
});

test('attempts that name the same two keys in another order do not lock each other out', async () => {
  const keys = ['a', 'b'].map((key) => ({ key, max: 30, windowSeconds: 60 }));
  const tries = Array.from({ length: 60 }, (_, i) => limitEach(i % 2 ? keys : keys.toReversed(), start));
  expect((await Promise.all(tries)).filter(({ allowed }) => allowed)).toHaveLength(30);
});

test('a window begun by a clock that ran far ahead starts afresh; one begun a moment ahead goes on', async () => {
  for (let i = 0; i < 6; i += 1) await limitAttempts('far', limit(after(86_400)));
  expect(await limitAttempts('far', limit(start))).toEqual({ allowed: true, waitSeconds: 0 });
  for (let i = 0; i < 6; i += 1) await limitAttempts('near', limit(after(2)));
  expect(await limitAttempts('near', limit(start))).toEqual({ allowed: false, waitSeconds: 62 });
});

test('windows that ended a day ago are swept out', async () => {
  await limitAttempts('old', limit(start));
  await limitAttempts('recent', limit(after(80_000)));
  await limitAttempts('new', limit(after(86_400 + 61)));
  await forgetEndedWindows(after(86_400 + 61));
  const keys = await db.attempt.findMany({ select: { key: true }, orderBy: { key: 'asc' } });
  expect(keys.map((row) => row.key)).toEqual(['new', 'recent']);
});

test('the window is counted in instants, whatever the zone of the database session', async () => {
  await limitAttempts('zone', limit(start));
  const row = await db.attempt.findUniqueOrThrow({ where: { key: 'zone' } });
  expect(row.resetAt).toEqual(after(60));
});

test('a key keeps no address', () => {
  const key = attemptKey('sign-in', '192.0.2.7', 'mira@example.org');
  expect(key).not.toContain('mira');
  expect(key).not.toContain('192');
  expect(key).not.toBe(attemptKey('sign-in', '192.0.2.8', 'mira@example.org'));
});
