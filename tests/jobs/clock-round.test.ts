import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { clockRound } from '@/lib/jobs/clock-round';
import { startDraft } from '@/lib/jobs/draft';
import { isClosedByTime } from '@/lib/jobs/rules/handover';
import { sendMessage } from '@/lib/jobs/send-message';
import { readToday } from '@/lib/jobs/today';
import { closeOn } from '@/lib/workshop/closing-days';
import { resetDatabase, useDatabase } from '@/tests/database';
import { readyJob, sendBack, takeMove } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { makeQuote, makeRequest } from '@/tests/makers/quote';
import { makeWorkshop } from '@/tests/makers/workshop';
import { allowConsole } from '@/tests/silence';
import { workerFolder } from '@/tests/world/settings';

const SENT = new Date('2026-11-25T09:00:00Z');
const after = (days: number) => new Date(SENT.getTime() + days * 86_400_000);

useDatabase();
beforeEach(resetDatabase);

describe('the hourly round of the clock', () => {
  it('closes a job fourteen days after its unit was sent back, once, and not before', async () => {
    const world = await makeWorkshop(SENT);
    const jobId = await readyJob(world, SENT);
    await sendBack(jobId, SENT);
    expect((await clockRound(after(13.9))).closed).toBe(0);
    expect((await clockRound(after(14))).closed).toBe(1);
    expect((await clockRound(after(15))).closed).toBe(0);
    const job = await db.job.findUniqueOrThrow({
      where: { id: jobId },
      include: { events: { orderBy: { version: 'asc' } } },
    });
    expect(job.stage).toBe('closed');
    expect(isClosedByTime(job.events)).toBe(true);
    expect(job.events.filter((event) => event.actorKind === 'clock')).toHaveLength(1);
  });

  it('closes one that went abroad only when a parcel there has come at the latest', async () => {
    const jobId = await readyJob(await makeWorkshop(SENT), SENT);
    await sendBack(jobId, SENT);
    const { customerId } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
    await db.customer.update({ where: { id: customerId }, data: { country: 'IE' } });
    // Twenty working days from Wednesday 25 November end with Wednesday 23 December.
    expect((await clockRound(after(28.6))).closed).toBe(0);
    expect((await clockRound(after(28.7))).closed).toBe(1);
    const closed = await db.jobEvent.findFirstOrThrow({ where: { jobId }, orderBy: { version: 'desc' } });
    expect(closed.data).toMatchObject({ note: 'Closed 29 days after it was sent back' });
  });

  it('counts a parcel’s days on the way without the holidays and closing days of the workshop', async () => {
    const sent = new Date('2026-12-18T09:00:00Z');
    const jobId = await readyJob(await makeWorkshop(sent), sent);
    await sendBack(jobId, sent);
    const { customerId } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
    await db.customer.update({ where: { id: customerId }, data: { country: 'IE' } });
    await closeOn({ from: day('2027-01-04'), to: day('2027-01-04'), name: 'Stocktaking' });
    // Without 25 and 28 December, 1 January and the stocktaking the twentieth working day is Thursday 21 January.
    expect((await clockRound(new Date('2027-01-21T23:30:00Z'))).closed).toBe(0);
    expect((await clockRound(new Date('2027-01-22T00:30:00Z'))).closed).toBe(1);
  });

  it('leaves a job to a person whose customer has written since its unit was sent back', async () => {
    const world = await makeWorkshop(SENT);
    const jobId = await readyJob(world, SENT);
    const write = (text: string, now: Date) => sendMessage({ jobId, text, actor: { kind: 'customer' }, now });
    await write('Please ring twice.', SENT);
    await sendBack(jobId, SENT);
    expect((await readToday(after(14))).lists.onUs).toEqual([]);
    await write('It has not come.', after(11));
    expect((await readToday(after(13))).lists.onUs).toEqual([]);
    expect((await clockRound(after(40))).closed).toBe(0);
    const { onUs } = (await readToday(after(40))).lists;
    expect(onUs.map(({ wait }) => wait)).toEqual([{ who: 'us', step: 'hear-of-parcel' }]);
    await takeMove(jobId, 'close', after(41));
    const { stage, events } = await db.job.findUniqueOrThrow({
      where: { id: jobId },
      include: { events: { orderBy: { version: 'asc' } } },
    });
    expect(stage).toBe('closed');
    expect(isClosedByTime(events)).toBe(false);
  });

  it('removes a booking nobody finished after fourteen days, and keeps one that became a job', async () => {
    const world = await makeWorkshop(SENT);
    await startDraft({ repairId: world.repairId, now: SENT });
    await makeBooking({ repairId: world.repairId, now: SENT });
    expect((await clockRound(after(13))).draftsRemoved).toBe(0);
    expect((await clockRound(after(15))).draftsRemoved).toBe(1);
    expect(await db.bookingDraft.count()).toBe(1);
    expect(await db.job.count()).toBe(1);
  });

  it('does the rest while a file cannot be deleted, and fails all the same', async () => {
    allowConsole();
    const world = await makeWorkshop(SENT);
    const quoteIds: string[] = [];
    for (const name of ['first', 'second', 'third']) {
      const asked = await makeRequest({ now: SENT, answers: { email: `${name}@example.org` } });
      quoteIds.push(asked.quoteId);
    }
    const [stuck = '', gone = '', priced = ''] = quoteIds;
    await db.quoteRequest.updateMany({
      where: { quoteId: { in: [stuck, gone] } },
      data: { state: 'turned-down' },
    });
    await makeQuote({ quoteId: priced, repairId: world.repairId, now: SENT });
    // Where a store would say that a file may not be deleted, a folder says so.
    const key = 'photos/stuck.jpg';
    mkdirSync(path.join(workerFolder, 'files', key, 'inside'), { recursive: true });
    const sizes = { sha256: '', width: 1, height: 1 };
    const keys = { fileKey: key, thumbKey: 'photos/none.jpg' };
    await db.photo.create({
      data: { quoteId: stuck, purpose: 'request', at: SENT, ...keys, ...sizes },
    });

    await expect(clockRound(after(220))).rejects.toBeInstanceOf(AggregateError);
    const states = async () =>
      db.quoteRequest.findMany({ orderBy: { emailKey: 'asc' }, select: { emailKey: true, state: true } });
    expect(await states()).toEqual([
      { emailKey: '', state: 'turned-down' },
      { emailKey: 'first@example.org', state: 'turned-down' },
      { emailKey: 'third@example.org', state: 'lapsed' },
    ]);
    rmSync(path.join(workerFolder, 'files', key), { recursive: true });
    expect(await clockRound(after(220))).toMatchObject({ peopleRemoved: 1, lapsed: 0 });
  });
});
