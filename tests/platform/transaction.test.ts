import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeEach, expect, test, vi } from 'vitest';
import { connect, db } from '@/lib/db/client';
import { isConflict, isOutOfTime, isUniqueViolation } from '@/lib/db/errors';
import { transaction } from '@/lib/db/transaction';
import { resetDatabase, useDatabase } from '@/tests/database';
import { allowConsole } from '@/tests/silence';

useDatabase();
beforeEach(async () => {
  await resetDatabase();
  await db.$executeRaw`drop table if exists box`;
  await db.$executeRaw`create table box (
    id int constraint box_id primary key, label text constraint box_label unique,
    weight int constraint box_weight check (weight > 0))`;
});

// The worker's next file may compare every table there is.
afterAll(async () => {
  await db.$executeRaw`drop table if exists box`;
});

const boxes = () => db.$queryRaw<{ id: number }[]>`select id from box order by id`;

test('what a transaction writes is there after it, all of it', async () => {
  const answer = await transaction(async (tx) => {
    await tx.$executeRaw`insert into box (id) values (1)`;
    await tx.$executeRaw`insert into box (id) values (2)`;
    return 'done';
  });
  expect(answer).toBe('done');
  expect(await boxes()).toEqual([{ id: 1 }, { id: 2 }]);
});

test('a use case that throws leaves nothing behind', async () => {
  const work = transaction(async (tx) => {
    await tx.$executeRaw`insert into box (id) values (1)`;
    throw new Error('changed its mind');
  });
  await expect(work).rejects.toThrow('changed its mind');
  expect(await boxes()).toEqual([]);
});

test('the outer client cannot be reached inside a transaction, not even by what it calls', async () => {
  const helper = () => boxes();
  await expect(transaction(() => helper())).rejects.toThrow('used inside a transaction');
  expect(await boxes()).toEqual([]);
});

test('a transaction inside a transaction is refused', async () => {
  await expect(transaction(() => transaction(async () => 1))).rejects.toThrow('pass tx on instead');
});

test.each([
  ['a serialization failure', '40001'],
  ['a deadlock', '40P01'],
])('%s starts the use case again, three times at most', async (_name, code) => {
  let runs = 0;
  const failing = (times: number) =>
    transaction(async (tx) => {
      runs += 1;
      await tx.$executeRaw`insert into box (id) values (${runs}::int)`;
      if (runs <= times) {
        await tx.$executeRawUnsafe(
          `do $$ begin raise exception 'give way' using errcode = '${code}'; end $$`,
        );
      }
    });
  await failing(3);
  expect(runs).toBe(4);
  expect(await boxes()).toEqual([{ id: 4 }]);

  await db.$executeRaw`truncate box`;
  runs = 0;
  const error = await failing(4).catch((thrown: unknown) => thrown);
  expect(runs).toBe(4);
  expect(isConflict(error)).toBe(true);
});

test('another failure is not tried again', async () => {
  let runs = 0;
  const work = transaction(async (tx) => {
    runs += 1;
    await tx.$executeRaw`select 1 / 0`;
  });
  await expect(work).rejects.toThrow();
  expect(runs).toBe(1);
});

test('a unique index that refuses is told by its name', async () => {
  await db.$executeRaw`insert into box (id, label) values (1, 'a')`;
  const error = await db.$executeRaw`insert into box (id, label) values (2, 'a')`.catch((e: unknown) => e);
  expect(isUniqueViolation(error)).toBe(true);
  expect(isUniqueViolation(error, 'box_label')).toBe(true);
  expect(isUniqueViolation(error, 'box_id')).toBe(false);
  expect(isUniqueViolation(new Error('no'), 'box_label')).toBe(false);
});

test('a unique index that refuses a write of the client is told by its name too', async () => {
  const person = { id: 'a', name: 'A', initials: 'A', email: 'a@example.org' };
  await db.user.create({ data: person });
  const error = await db.user.create({ data: { ...person, id: 'b' } }).catch((e: unknown) => e);
  expect(isUniqueViolation(error)).toBe(true);
  expect(isUniqueViolation(error, 'box_label')).toBe(false);
});

// lib/commands/throwaway-postgres.ts gives its server another zone; without the pinned session this reads 09:30 there.
test('an instant comes back as it is, whatever zone the server would choose', async () => {
  const instant = new Date('2026-07-01T12:00:00.000Z');
  const rows = await db.$queryRaw<{ given: Date; stored: Date }[]>`
    select ${instant}::timestamptz as given, timestamptz '2026-07-01T12:00:00Z' as stored`;
  expect(rows).toEqual([{ given: instant, stored: instant }]);
  expect(await db.$queryRaw`select current_setting('TimeZone') as zone`).toEqual([{ zone: 'UTC' }]);
});

test('a transaction that takes too long keeps nothing, and is refused in words', async () => {
  allowConsole();
  const work = connect().$transaction(
    async (tx) => {
      await tx.$executeRaw`insert into box (id) values (1)`;
      await wait(120);
      await tx.$executeRaw`insert into box (id) values (2)`;
    },
    { timeout: 60 },
  );
  const late: unknown = await work.catch((error: unknown) => error);
  expect(isOutOfTime(late)).toBe(true);
  expect(isOutOfTime(new Error('expired'))).toBe(false);
  expect(await boxes()).toEqual([]);

  const answer = vi.spyOn(connect(), '$transaction').mockRejectedValueOnce(late);
  await expect(transaction(async () => 1)).rejects.toMatchObject({ name: 'Refusal', code: 'unavailable' });
  answer.mockRestore();
});
