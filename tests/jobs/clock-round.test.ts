import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { clockRound } from '@/lib/jobs/clock-round';
import { startDraft } from '@/lib/jobs/draft';
import { resetDatabase, useDatabase } from '@/tests/database';
import { readyJob, sendBack } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { makeWorkshop } from '@/tests/makers/workshop';

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
    const job = await db.job.findUniqueOrThrow({ where: { id: jobId }, include: { events: true } });
    expect(job.stage).toBe('closed');
    expect(job.events.filter((event) => event.actorKind === 'clock')).toHaveLength(1);
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
});
