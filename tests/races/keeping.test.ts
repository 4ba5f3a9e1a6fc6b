import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { sendUnclaimedNotices } from '@/lib/jobs/unclaimed-notices';
import { erasePerson } from '@/lib/keeping/erase-person';
import { noteSeen } from '@/lib/keeping/seen';
import { sweepPeople } from '@/lib/keeping/write-sweep';
import { attempt } from '@/lib/outcome';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob, proved, takeMove } from '@/tests/makers/course';
import { ADDRESS, makeBooking } from '@/tests/makers/job';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const READY = new Date('2026-11-02T10:00:00Z');
const on = (text: string) => new Date(`${text}T10:00:00Z`);
const four = [1, 2, 3, 4];

useDatabase();
beforeEach(resetDatabase);

describe('several instances at once', () => {
  it('send each notice about a unit once', async () => {
    const world = await makeWorkshop(READY);
    const jobId = await assessedJob(world, READY);
    await takeMove(jobId, 'start-bench', READY);
    await proved(world, jobId, READY);
    await db.mail.updateMany({ where: { jobId }, data: { state: 'sent', sentAt: READY } });
    for (const day of ['2026-11-23', '2026-12-14', '2027-01-04']) {
      const sent = await Promise.all(four.map(() => sendUnclaimedNotices(on(day))));
      expect(sent.reduce((sum, each) => sum + each, 0)).toBe(1);
    }
    expect(await db.mail.count({ where: { jobId, template: 'unclaimed-notice' } })).toBe(3);
    expect(await db.unclaimedNotice.count()).toBe(3);
  });

  it('remove a person’s data once, whether by the owner or by the clock', async () => {
    const world = await makeWorkshop(READY);
    const { jobId, number } = await makeBooking({ repairId: world.repairId, now: READY });
    await takeMove(jobId, 'cancel', READY);
    const now = on('2034-01-01');
    await Promise.all([
      ...four.map(() => attempt(() => erasePerson({ number, isCoverConfirmed: false, actor: OWNER, now }))),
      ...four.map(() => attempt(() => sweepPeople(now))),
    ]);
    expect(await db.jobEvent.count({ where: { jobId, kind: 'data-removed' } })).toBe(1);
    expect((await db.customer.findFirstOrThrow()).name).toBe('Data removed');
  });

  it('keep one row of the log for one person, job and hour', async () => {
    const world = await makeWorkshop(READY);
    const { jobId } = await makeBooking({ repairId: world.repairId, now: READY });
    const seen = { userId: BENCH.id, what: 'opened', email: ADDRESS.email, jobId, now: READY } as const;
    await Promise.all(four.map(() => noteSeen(seen)));
    expect(await db.seenBy.count()).toBe(1);
  });
});
