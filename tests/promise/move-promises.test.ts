import { beforeEach, describe, expect, it } from 'vitest';
import { problems } from '@/app/workshop/(inside)/promise/move/not-moved';
import { day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { listPromisesToMove } from '@/lib/jobs/list-promises-to-move';
import { movePromises } from '@/lib/jobs/move-promises';
import { showNumber } from '@/lib/numbers/job-number';
import { Refusal, type RefusalCode } from '@/lib/outcome';
import { closeOn } from '@/lib/workshop/closing-days';
import { readWorkshop } from '@/lib/workshop/records';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob, takeMove } from '@/tests/makers/course';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

/** A Wednesday; what comes in on it is promised for Wednesday 2 December. */
const now = new Date('2026-11-25T09:00:00Z');
const REASON = 'We are closed for stocktaking.';

useDatabase();
beforeEach(resetDatabase);

const list = async () => (await listPromisesToMove(await readWorkshop(), now)).toMove;
const closed = () => closeOn({ from: day('2026-12-01'), to: day('2026-12-04'), name: 'Stocktaking' });
const promised = async (number: string) => {
  const { promisedOn } = await db.job.findUniqueOrThrow({ where: { number } });
  return promisedOn && dayFromDate(promisedOn);
};

async function twoJobs(): Promise<[string, string]> {
  const world = await makeWorkshop(now);
  const ids = [await assessedJob(world, now), await assessedJob(world, now)];
  const jobs = await db.job.findMany({ where: { id: { in: ids } }, orderBy: { id: 'asc' } });
  const [one, two] = jobs.map(({ number }) => number);
  if (!one || !two) throw new Error('Two jobs were made');
  return [one, two];
}

describe('the promises of a closed week', () => {
  it('are listed with the next day, told in one go and off the list then', async () => {
    const numbers = await twoJobs();
    expect(await list()).toEqual([]);
    expect(await closed()).toBe(2);
    const found = await list();
    expect(found.map(({ why, to, promise }) => [promise.number, why, to])).toEqual(
      numbers.map((number) => [number, 'closed', '2026-12-07']),
    );
    const moves = found.map(({ promise, to }) => ({ number: promise.number, version: promise.version, to }));
    const done = await movePromises({ moves, reason: REASON, actor: BENCH, now });
    expect(done).toEqual({ moved: numbers, notMoved: [] });
    expect(await list()).toEqual([]);
    for (const number of numbers) {
      expect(await promised(number)).toBe('2026-12-07');
      const mails = await db.mail.findMany({ where: { job: { number }, template: 'promise-moved' } });
      expect(mails.map(({ data }) => data)).toEqual([
        { from: '2026-12-02', to: '2026-12-07', reason: REASON },
      ]);
    }
  });

  it('are moved but for a job that changed meanwhile and a day on which nobody is here', async () => {
    const [one, two] = await twoJobs();
    await closed();
    const found = await list();
    const { id } = await db.job.findUniqueOrThrow({ where: { number: two } });
    await takeMove(id, 'start-bench', now);
    const [first] = found;
    if (!first) throw new Error('Nothing to move');
    const { moved, notMoved } = await movePromises({
      moves: [
        { number: one, version: first.promise.version, to: day('2026-12-03') },
        { number: one, version: first.promise.version, to: day('2026-12-08') },
        { number: two, version: 1, to: day('2026-12-08') },
        { number: 'J00000000', version: 1, to: day('2026-12-08') },
      ],
      reason: REASON,
      actor: BENCH,
      now,
    });
    expect(moved).toEqual([one]);
    expect(notMoved.map(({ number, refusal }) => [number, refusal.code])).toEqual([
      [one, 'invalid'],
      [two, 'conflict'],
    ]);
    expect(await promised(one)).toBe('2026-12-08');
    expect(await promised(two)).toBe('2026-12-02');
    expect(await db.mail.count({ where: { template: 'promise-moved' } })).toBe(1);
  });

  it('that somebody else moved to the same days meanwhile are named, not blamed on their days', async () => {
    await twoJobs();
    await closed();
    const moves = (await list()).map(({ promise, to }) => ({
      number: promise.number,
      version: promise.version,
      to,
    }));
    const move = () => movePromises({ moves, reason: REASON, actor: BENCH, now });
    await move();
    const { moved, notMoved } = await move();
    expect([moved, notMoved.map(({ refusal }) => refusal.code)]).toEqual([[], ['conflict', 'conflict']]);
    const shown = moves.map(({ number }) => showNumber(number)).join(', ');
    expect(problems(notMoved, 0)).toEqual({
      errors: {},
      message: `Changed meanwhile, so look at them first: ${shown}.`,
    });
  });

  it('leave out the unit whose customer is asked', async () => {
    const [one] = await twoJobs();
    await db.job.update({ where: { number: one }, data: { stage: 'awaiting-approval' } });
    await closed();
    expect((await list()).map(({ promise }) => promise.number)).not.toContain(one);
    expect(await list()).toHaveLength(1);
  });
});

it('a promise that could not be moved is told by what stood against it', () => {
  const refused = (code: RefusalCode, message: string) => ({
    number: 'J4K7QX290',
    refusal: new Refusal(code, message),
  });
  const shown = showNumber('J4K7QX290');
  expect(problems([refused('invalid', 'The workshop is closed')], 1)).toEqual({
    errors: { 'to-J4K7QX290': ['The workshop is closed'] },
    message: '1 promise is moved and its customer told, but not all.',
  });
  expect(problems([refused('not-found', 'There is no such job.')], 0).message).toBe(
    `Changed meanwhile, so look at it first: ${shown}.`,
  );
  expect(problems([refused('unavailable', 'Send it again in a minute.')], 0)).toEqual({
    errors: {},
    message: `${shown}: Send it again in a minute.`,
  });
});
