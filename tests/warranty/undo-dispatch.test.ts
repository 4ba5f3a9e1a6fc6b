import { beforeAll, describe, expect, it } from 'vitest';
import { dayFromDate } from '@/lib/calendar/day';
import { findHalfStates } from '@/lib/commands/faults/half-states';
import { db } from '@/lib/db/client';
import { onServer } from '@/lib/db/server';
import { cameBack } from '@/lib/jobs/came-back';
import { factsOf } from '@/lib/jobs/facts';
import { readToday } from '@/lib/jobs/today';
import { drawMail } from '@/lib/mail/draw';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { dispatch } from '@/lib/warranty/dispatch';
import { readCoverEnds } from '@/lib/warranty/stored-cover-ends';
import { undoDispatch } from '@/lib/warranty/undo-dispatch';
import { useDatabase } from '@/tests/database';
import { jobNow, makeClaim, moveTo, proveJob, ruleClaim, sendBack, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { makeReady } from '@/tests/parcels/ready';

useDatabase();

const SAID = new Date('2026-11-25T10:00:00Z');
const SEEN = new Date('2026-11-26T10:00:00Z');
const LEFT = new Date('2026-11-30T10:00:00Z');
const REASON = 'The line above was meant.';

let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeAll(async () => {
  world = await makeWorkshop(SAID);
  await db.policyVersion.updateMany({
    data: { startEvent: 'handed-to-carrier', heldRule: 'from-seven-days' },
  });
}, 60_000);

async function ready(serial: string) {
  return (await makeReady(world, SAID, { serial })).jobId;
}

async function collect(jobId: string, now: Date) {
  const { version } = await jobNow(jobId);
  return dispatch({ jobId, version, handover: { by: 'collected' }, postage: 0, actor: BENCH, now });
}

async function undo(jobId: string, now = SEEN) {
  const { version } = await jobNow(jobId);
  await undoDispatch({ jobId, version, reason: REASON, actor: BENCH, now });
}

/** As a dispatch was kept before its postage was. */
async function forgetPostage(jobId: string) {
  await db.$executeRaw`ALTER TABLE "job_event" DISABLE TRIGGER USER`;
  await db.$executeRaw`UPDATE "job_event" SET "data" = "data" - 'postage' WHERE "jobId" = ${jobId} AND "kind" = 'sent-back'`;
  await db.$executeRaw`ALTER TABLE "job_event" ENABLE TRIGGER USER`;
}

function halfStates() {
  return onServer(process.env['DATABASE_URL'] ?? '', (client) => findHalfStates((sql) => client.query(sql)));
}

async function mailText(jobId: string, template: string): Promise<string> {
  const mail = await db.mail.findFirstOrThrow({ where: { jobId, template }, orderBy: { queuedAt: 'desc' } });
  return (await drawMail(mail)).text;
}

describe('a unit that was recorded as gone by mistake', () => {
  it('is ready as before when it was said to be collected, with the certificate it has, and its customer is told', async () => {
    const jobId = await ready('HW2-82001-A');
    await collect(jobId, SAID);
    const { certificates, readyAt, number } = await jobNow(jobId);
    await undo(jobId);
    const job = await jobNow(jobId);
    expect(job).toMatchObject({ stage: 'ready', sentBackAt: null, closedAt: null, carrier: '', readyAt });
    expect(job.certificates).toEqual(certificates);
    expect(job.events.at(-1)).toMatchObject({ kind: 'dispatch-undone', data: { reason: REASON } });
    const told = await mailText(jobId, 'dispatch-undone');
    expect(told).toContain('We wrote that you collected it.');
    expect(told).toContain(REASON);
    expect(told).toContain('The certificate we sent you stands.');
    expect(told).not.toContain('another way');
    const { lists } = await readToday(SEEN);
    expect(lists.onUs.find((row) => row.job.number === number)?.wait).toEqual({
      who: 'us',
      step: 'send-back',
    });
  });

  it('gets the few days until it really leaves under a rule that gives back only longer ones, and no second certificate', async () => {
    const jobId = await ready('HW2-82002-A');
    await sendBack(jobId, SAID);
    await undo(jobId);
    expect((await sendBack(jobId, LEFT)).certificate).toBeNull();
    const { certificates, number } = await jobNow(jobId);
    const [certificate] = certificates;
    expect(certificates).toHaveLength(1);
    const held = await db.heldInterval.findUniqueOrThrow({ where: { claimNumber: number } });
    expect([dayFromDate(held.fromDay), dayFromDate(held.toDay)]).toEqual(['2026-11-25', '2026-11-30']);
    expect(certificate && (await readCoverEnds([certificate])).get(certificate.id)?.end).toBe('2027-11-30');
    const told = await mailText(jobId, 'unit-sent-back');
    expect(told).toContain('that was a mistake of ours');
    expect(told).toContain('it covers until the end of Tuesday 30 November 2027');
    expect(told).not.toContain('once more');
    // The parcel comes back later: where cover starts with the carrier, that costs it nothing more.
    const { version } = await jobNow(jobId);
    const back = new Date('2026-12-09T10:00:00Z');
    await cameBack({ jobId, version, reason: 'Nobody at home', actor: BENCH, now: back });
    await sendBack(jobId, back);
    const stays = await db.heldInterval.findUniqueOrThrow({ where: { claimNumber: number } });
    expect(dayFromDate(stays.toDay)).toBe('2026-11-30');
    expect(await mailText(jobId, 'unit-sent-back')).toContain('once more');
  });

  it.each([
    ['HW2-82003-A', 'as it is kept', false],
    ['HW2-82006-A', 'of a dispatch from before its postage was kept', true],
  ])('costs a claim no postage for a parcel that never went (%s, %s)', async (serial, _, isOld) => {
    const first = await ready(serial);
    const { certificate } = await sendBack(first, SAID);
    const opened = new Date('2027-02-01T10:00:00Z');
    const claim = await makeClaim({ number: certificate?.number ?? '', now: opened, serial });
    const { jobId, claimId } = claim;
    await takeIn(jobId, opened);
    await moveTo(jobId, 'assess', opened);
    await ruleClaim(claim, { cause: 'workmanship', now: opened });
    await moveTo(jobId, 'start-bench', opened);
    await proveJob(jobId, world, opened);
    await sendBack(jobId, new Date('2027-02-11T10:00:00Z'));
    if (isOld) await forgetPostage(jobId);
    await undo(jobId, new Date('2027-02-11T11:00:00Z'));
    const cost = async () => (await db.claim.findUniqueOrThrow({ where: { id: claimId } })).costPostageMinor;
    expect(await cost()).toBe(0);
    await sendBack(jobId, new Date('2027-02-12T10:00:00Z'));
    expect(await cost()).toBe(420);
  });

  it('leaves its customer the contest of their ruling, and the certificate of one that is won', async () => {
    const serial = 'HW2-82007-A';
    const first = await ready(serial);
    const { certificate } = await sendBack(first, SAID);
    const number = certificate?.number ?? '';
    const opened = new Date('2027-02-01T10:00:00Z');
    const claim = await makeClaim({ number, now: opened, serial });
    const { jobId, claimId } = claim;
    await takeIn(jobId, opened);
    await moveTo(jobId, 'assess', opened);
    await ruleClaim(claim, { cause: 'damage-after-return', now: opened });
    await moveTo(jobId, 'return-unrepaired', opened);
    expect((await sendBack(jobId, new Date('2027-02-11T10:00:00Z'))).certificate).toBeNull();
    await undo(jobId, new Date('2027-02-11T11:00:00Z'));
    const job = await jobNow(jobId);
    expect(factsOf(job)).toMatchObject({ mayContest: true, hasLeft: false });
    const letter = (await mailText(jobId, 'dispatch-undone')).replace(/\s+/g, ' ');
    expect(letter).toContain('Do you see our ruling on your claim another way?');
    expect(letter).toContain('The button is on the job page, below our ruling.');
    expect(job.claim).toMatchObject({ state: 'ruled', costPostageMinor: null });
    expect((await jobNow(first)).certificates).toHaveLength(1);
    expect(await db.heldInterval.count({ where: { certificateNumber: number } })).toBe(0);
    expect(await halfStates()).toEqual([]);

    const won = new Date('2027-02-15T10:00:00Z');
    await contestRuling({ jobId, text: 'It was never wet.', now: won });
    await ruleClaim(claim, { cause: 'workmanship', now: won });
    await moveTo(jobId, 'start-bench', won);
    await proveJob(jobId, world, won);
    const left = new Date('2027-02-18T10:00:00Z');
    expect((await sendBack(jobId, left)).certificate).toEqual({ number, revision: 2 });
    const ended = await db.claim.findUniqueOrThrow({ where: { id: claimId } });
    expect(ended).toMatchObject({ state: 'closed', closedAt: left, costPostageMinor: 420 });
    expect(await halfStates()).toEqual([]);

    // Its certificate is issued now: a mistake after that leaves the claim closed.
    await undo(jobId, new Date('2027-02-19T10:00:00Z'));
    const after = await jobNow(jobId);
    expect(after.claim).toMatchObject({ state: 'closed', costPostageMinor: 0 });
    expect(factsOf(after).hasLeft).toBe(true);
    expect(await mailText(jobId, 'dispatch-undone')).not.toContain('another way');
    expect(await halfStates()).toEqual([]);
  }, 30_000);

  it('stays gone after fourteen days, once its certificate is claimed from, and on a page that is old', async () => {
    const jobId = await ready('HW2-82004-A');
    const { certificate } = await sendBack(jobId, SAID);
    await expect(undo(jobId, new Date('2026-12-10T10:00:00Z'))).rejects.toThrow('more than 14 days ago');
    const { version } = await jobNow(jobId);
    const old = { jobId, version: version - 1, reason: REASON, actor: BENCH, now: SEEN };
    await expect(undoDispatch(old)).rejects.toMatchObject({ code: 'conflict' });
    await makeClaim({ number: certificate?.number ?? '', now: SEEN, serial: 'HW2-82004-A' });
    await expect(undo(jobId)).rejects.toThrow('A claim was opened on its certificate since');
    expect((await jobNow(jobId)).stage).toBe('sent-back');
  });

  it('is not taken back of a unit that is here', async () => {
    const jobId = await ready('HW2-82005-A');
    await expect(undo(jobId)).rejects.toMatchObject({ code: 'conflict' });
  });
});
