import { beforeAll, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { cameBack } from '@/lib/jobs/came-back';
import { clockRound } from '@/lib/jobs/clock-round';
import { moveJob } from '@/lib/jobs/move';
import { eventLine } from '@/lib/jobs/rules/events';
import { endSearch, seekParcel } from '@/lib/jobs/seek-parcel';
import { sendMessage } from '@/lib/jobs/send-message';
import { readToday } from '@/lib/jobs/today';
import { drawMail } from '@/lib/mail/draw';
import { dispatch } from '@/lib/warranty/dispatch';
import { useDatabase } from '@/tests/database';
import { jobNow, moveTo, sendBack } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { makeReady } from './ready';

useDatabase();

const SENT = new Date('2026-11-25T10:00:00Z');
const SOUGHT = new Date('2026-12-07T10:00:00Z');
const LATER = new Date('2026-12-20T10:00:00Z');
const ASKED = 'They saw it last in Sandmouth.';

let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeAll(async () => {
  world = await makeWorkshop(SENT);
}, 60_000);

async function sent(serial: string) {
  const { jobId } = await makeReady(world, SENT, { serial });
  await sendBack(jobId, SENT);
  return jobId;
}

async function seek(jobId: string, now = SOUGHT) {
  const { version } = await jobNow(jobId);
  await seekParcel({ jobId, version, note: ASKED, actor: BENCH, now });
}

async function end(jobId: string, how: 'delivered' | 'lost', note = '') {
  const { version } = await jobNow(jobId);
  await endSearch({ jobId, version, how, note, actor: BENCH, now: LATER });
}

async function mailText(jobId: string, template: string): Promise<string> {
  return (await drawMail(await db.mail.findFirstOrThrow({ where: { jobId, template } }))).text;
}

async function soughtOnToday(now: Date) {
  const { sought, lists } = await readToday(now);
  return { sought, onUs: lists.onUs.map(({ job }) => job.number) };
}

describe('a parcel that does not come on its way back', () => {
  it('is looked for: its customer is told, Today lists it alone, and nobody closes its job', async () => {
    const jobId = await sent('HW2-83001-A');
    const { number } = await jobNow(jobId);
    await sendMessage({ jobId, text: 'It has not come.', actor: { kind: 'customer' }, now: SOUGHT });
    await seek(jobId);
    const told = await mailText(jobId, 'parcel-sought');
    expect(told).toContain('Your unit left us with Harbour Post');
    expect(told).toContain(ASKED);
    const { sought, onUs } = await soughtOnToday(LATER);
    expect(sought.filter((each) => each.number === number)).toMatchObject([
      {
        carrier: 'Harbour Post',
        reference: 'HP-2201',
        since: '2026-12-07',
        days: 13,
        sentBackOn: '2026-11-25',
      },
    ]);
    expect(onUs).not.toContain(number);
    await expect(moveTo(jobId, 'close', LATER)).rejects.toThrow('say first how that ended');
    await expect(seek(jobId, LATER)).rejects.toThrow('looked for already');
  });

  it('is closed once it was delivered, which needs no words', async () => {
    const jobId = await sent('HW2-83002-A');
    await seek(jobId);
    await end(jobId, 'delivered');
    expect(await jobNow(jobId)).toMatchObject({ stage: 'closed', soughtSince: null, closedAt: LATER });
    expect(await mailText(jobId, 'search-ended')).toContain('Your parcel was found: it was delivered.');
    const { number } = await jobNow(jobId);
    expect((await soughtOnToday(LATER)).sought.map((each) => each.number)).not.toContain(number);
    await expect(end(jobId, 'lost', 'We pay.')).rejects.toThrow('not looked for');
  });

  it('is lost with what becomes of it, in words for the customer, also where its job was closed before', async () => {
    const jobId = await sent('HW2-83003-A');
    await moveTo(jobId, 'close', SOUGHT);
    const { closedAt, number } = await jobNow(jobId);
    await seek(jobId);
    expect((await soughtOnToday(LATER)).sought.map((each) => each.number)).toContain(number);
    await expect(end(jobId, 'lost')).rejects.toMatchObject({ field: 'note' });
    await end(jobId, 'lost', 'We pay you what it was worth.');
    const job = await jobNow(jobId);
    expect(job).toMatchObject({ stage: 'closed', soughtSince: null, closedAt });
    const last = job.events.at(-1);
    expect(eventLine(last?.kind ?? '', last?.data)).toBe(
      'It is lost for good: We pay you what it was worth.',
    );
    const told = await mailText(jobId, 'search-ended');
    expect(told).toContain('Your parcel is lost');
    expect(told).toContain('We pay you what it was worth.');
  });

  it('is left by the clock, and looked for no more once it comes back to us', async () => {
    const jobId = await sent('HW2-83004-A');
    const other = await sent('HW2-83007-A');
    await seek(jobId);
    await clockRound(LATER);
    const stages = [(await jobNow(jobId)).stage, (await jobNow(other)).stage];
    expect(stages).toEqual(['sent-back', 'closed']);
    const { version } = await jobNow(jobId);
    await cameBack({ jobId, version, reason: 'The label was torn.', actor: BENCH, now: LATER });
    expect(await jobNow(jobId)).toMatchObject({ stage: 'ready', soughtSince: null });
  });

  it('is not looked for where its customer collected the unit, nor on a page that is old', async () => {
    const { jobId } = await makeReady(world, SENT, { serial: 'HW2-83005-A' });
    const { version } = await jobNow(jobId);
    const handover = { by: 'collected' } as const;
    await dispatch({ jobId, version, handover, postage: 0, actor: BENCH, now: SENT });
    await expect(seek(jobId)).rejects.toThrow('No carrier');
    const other = await sent('HW2-83006-A');
    const old = {
      jobId: other,
      version: (await jobNow(other)).version,
      note: ASKED,
      actor: BENCH,
      now: SOUGHT,
    };
    await moveJob({ ...old, move: 'close' });
    await expect(seekParcel(old)).rejects.toMatchObject({ code: 'conflict' });
  });
});
