import { beforeEach, describe, expect, it } from 'vitest';
import { day, dayFromDate } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import { db } from '@/lib/db/client';
import { movePromise } from '@/lib/jobs/move-promise';
import { newPromiseProblem } from '@/lib/promise/rules/new-promise';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob, proved, takeMove, versionOf } from '@/tests/makers/course';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');
const calendar = holidayCalendar({ country: 'GB', region: 'ENG', years: [2026] });

useDatabase();
beforeEach(resetDatabase);

describe('a promise moved by a person', () => {
  const ask = (to: string, promisedOn: string | null = '2026-12-09') =>
    newPromiseProblem({
      promisedOn: promisedOn === null ? null : day(promisedOn),
      to: day(to),
      today: day('2026-12-03'),
      calendar,
    });

  it.each([
    ['a later working day', '2026-12-11', null],
    ['an earlier working day', '2026-12-04', null],
    ['today', '2026-12-03', null],
    ['the same day', '2026-12-09', 'same-day'],
    ['a day gone by', '2026-12-02', 'past'],
    ['a Saturday', '2026-12-12', 'closed'],
    // Christmas Day, gov.uk/bank-holidays
    ['a public holiday', '2026-12-25', 'closed'],
  ])('to %s', (_name, to, problem) => {
    expect(ask(to)).toBe(problem);
  });

  it('needs a promise to move', () => {
    expect(ask('2026-12-11', null)).toBe('no-promise');
  });

  it('is kept with its reason and told to the customer', async () => {
    const world = await makeWorkshop(now);
    const jobId = await assessedJob(world, now);
    const before = await db.job.findUniqueOrThrow({ where: { id: jobId } });
    expect(before.promisedOn && dayFromDate(before.promisedOn)).toBe('2026-12-02');
    await movePromise({
      jobId,
      version: before.version,
      to: day('2026-12-08'),
      reason: 'The socket comes from the maker and is late.',
      actor: BENCH,
      now,
    });
    const after = await db.job.findUniqueOrThrow({ where: { id: jobId }, include: { events: true } });
    expect(after.promisedOn && dayFromDate(after.promisedOn)).toBe('2026-12-08');
    const moved = {
      from: '2026-12-02',
      to: '2026-12-08',
      reason: 'The socket comes from the maker and is late.',
    };
    expect(after.events.find((event) => event.kind === 'promise-moved')).toMatchObject({
      actorId: BENCH.id,
      data: moved,
    });
    const mails = await db.mail.findMany({ where: { jobId, template: 'promise-moved' } });
    expect(mails.map((mail) => mail.data)).toEqual([moved]);
  });

  it('loses against another change, and is refused once the unit is ready', async () => {
    const world = await makeWorkshop(now);
    const jobId = await assessedJob(world, now);
    const move = { jobId, to: day('2026-12-08'), reason: 'Late', actor: BENCH, now };
    await expect(movePromise({ ...move, version: 1 })).rejects.toMatchObject({ code: 'conflict' });
    await takeMove(jobId, 'start-bench', now);
    await proved(world, jobId, now);
    const version = await versionOf(jobId);
    await expect(movePromise({ ...move, version })).rejects.toMatchObject({ code: 'conflict' });
    expect(await db.mail.count({ where: { template: 'promise-moved' } })).toBe(0);
  });
});
