import { beforeAll, beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { readStatus } from '@/lib/jobs/records';
import { limitMisses, MISSES_AN_HOUR } from '@/lib/people/limit-misses';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const start = new Date('2026-12-01T09:00:00Z');
const HOUR = 3_600_000;
const NOTHING = 'J4K7QX290';
let there: string;
let looked = 0;

beforeAll(async () => {
  const { repairId } = await makeWorkshop(start);
  await makeBooking({ repairId, now: start });
  there = (await db.job.findFirstOrThrow()).number;
}, 60_000);

beforeEach(async () => {
  await db.attempt.deleteMany();
  looked = 0;
});

const seek = (number: string, caller: string | null, at = start) =>
  limitMisses({
    number,
    caller,
    now: at,
    async read() {
      looked += 1;
      return (await readStatus(number))?.stage ?? null;
    },
  });

test('who names numbers that are there is never made to wait, and leaves nothing written', async () => {
  for (let i = 0; i < MISSES_AN_HOUR.caller * 2; i += 1) {
    expect(await seek(there, '192.0.2.7')).toEqual({ allowed: true, found: 'booked' });
  }
  expect(await db.attempt.count()).toBe(0);
});

test('one caller misses so often in an hour; then even a hit is kept back, and others go on', async () => {
  for (let i = 0; i < MISSES_AN_HOUR.caller; i += 1) {
    expect(await seek(NOTHING, '192.0.2.7')).toEqual({ allowed: true, found: null });
  }
  expect(await seek(there, '192.0.2.7')).toEqual({ allowed: false, waitSeconds: 3600 });
  expect(await seek(NOTHING, '192.0.2.7')).toEqual({ allowed: false, waitSeconds: 3600 });
  expect(looked).toBe(0);
  expect((await seek(there, '192.0.2.8')).allowed).toBe(true);
  expect(await seek(there, '192.0.2.7', new Date(start.getTime() + HOUR))).toMatchObject({ found: 'booked' });
});

test('guesses sent at once are all counted', async () => {
  const answers = await Promise.all(Array.from({ length: 60 }, () => seek(NOTHING, '192.0.2.7')));
  expect(answers.filter(({ allowed }) => allowed)).toHaveLength(MISSES_AN_HOUR.caller);
});

test('a hit among guesses sent at once is kept back once they are spent', async () => {
  const guesses = Array.from({ length: 200 }, (_, i) => seek(i % 2 ? there : NOTHING, '192.0.2.7'));
  const answers = await Promise.all(guesses);
  const hits = answers.filter((answer) => answer.allowed && answer.found !== null);
  // As many as came before the last miss that may pass, and one for each of the ten connections at most.
  expect(hits.length).toBeLessThanOrEqual(MISSES_AN_HOUR.caller + 10);
});

test('many callers together miss no more than everybody may', async () => {
  let passed = 0;
  for (let i = 0; i < MISSES_AN_HOUR.everybody + 20; i += 1) {
    if ((await seek(NOTHING, `192.0.2.${i % 250}`)).allowed) passed += 1;
  }
  expect(passed).toBe(MISSES_AN_HOUR.everybody);
  expect((await seek(there, null)).allowed).toBe(false);
});

test('a clock that ran a year ahead and was set right keeps nobody waiting', async () => {
  const ahead = new Date(start.getTime() + 8760 * HOUR);
  for (let i = 0; i < MISSES_AN_HOUR.caller; i += 1) await seek(NOTHING, '192.0.2.7', ahead);
  expect((await seek(there, '192.0.2.7')).allowed).toBe(true);
  expect(await seek(NOTHING, '192.0.2.7')).toEqual({ allowed: true, found: null });
});
