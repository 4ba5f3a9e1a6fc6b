import { beforeEach, expect, test } from 'vitest';
import { limitMisses, MISSES_AN_HOUR } from '@/lib/people/limit-misses';
import { resetDatabase, useDatabase } from '@/tests/database';

useDatabase();
beforeEach(resetDatabase);

const start = new Date('2026-12-01T09:00:00Z');
const HOUR = 3_600_000;
const hit = async () => 'closed';
const miss = async () => null;
const seek = (lookUp: () => Promise<string | null>, caller: string | null, at = start) =>
  limitMisses({ caller, now: at, lookUp });

test('who names numbers that are there is never made to wait', async () => {
  for (let i = 0; i < MISSES_AN_HOUR.caller * 2; i += 1) {
    expect(await seek(hit, '192.0.2.7')).toEqual({ allowed: true, found: 'closed' });
  }
});

test('one caller misses so often in an hour; then even a hit is kept back, and others go on', async () => {
  for (let i = 0; i < MISSES_AN_HOUR.caller; i += 1) {
    expect(await seek(miss, '192.0.2.7')).toEqual({ allowed: true, found: null });
  }
  let asked = false;
  const answer = await seek(async () => {
    asked = true;
    return 'closed';
  }, '192.0.2.7');
  expect(answer).toEqual({ allowed: false, waitSeconds: 3600 });
  expect(asked).toBe(false);
  expect((await seek(hit, '192.0.2.8')).allowed).toBe(true);
  expect(await seek(hit, '192.0.2.7', new Date(start.getTime() + HOUR))).toMatchObject({ found: 'closed' });
});

test('guesses sent at once are all counted', async () => {
  const answers = await Promise.all(Array.from({ length: 60 }, () => seek(miss, '192.0.2.7')));
  expect(answers.filter(({ allowed }) => allowed)).toHaveLength(MISSES_AN_HOUR.caller);
});

test('many callers together miss no more than everybody may', async () => {
  let looked = 0;
  const counted = async () => {
    looked += 1;
    return null;
  };
  for (let i = 0; i < MISSES_AN_HOUR.everybody + 20; i += 1) await seek(counted, `192.0.2.${i % 250}`);
  expect(looked).toBe(MISSES_AN_HOUR.everybody);
});
