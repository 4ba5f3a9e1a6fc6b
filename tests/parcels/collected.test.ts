import { beforeAll, describe, expect, it } from 'vitest';
import { day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { eventLine } from '@/lib/jobs/rules/events';
import { isCollected } from '@/lib/jobs/rules/handover';
import { drawMail } from '@/lib/mail/draw';
import { keepParcel } from '@/lib/parcels/keep-parcel';
import { dispatch } from '@/lib/warranty/dispatch';
import { returnDay, startDay } from '@/lib/warranty/rules/start-day';
import { START_EVENTS } from '@/lib/warranty/rules/terms';
import { useDatabase } from '@/tests/database';
import { jobNow, makeClaim, moveTo, proveJob, ruleClaim, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { ENGLAND } from '../warranty/made';
import { makeReady } from './ready';

useDatabase();

// A Wednesday.
const NOW = new Date('2026-11-25T10:00:00Z');

let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeAll(async () => {
  world = await makeWorkshop(NOW);
  // The strictest case: a policy whose cover waits for the post.
  await db.policyVersion.updateMany({ data: { startEvent: 'delivered' } });
}, 60_000);

async function fetch(jobId: string, now = NOW) {
  const { version } = await jobNow(jobId);
  return dispatch({ jobId, version, handover: { by: 'collected' }, postage: 0, actor: BENCH, now });
}

describe('a unit that its customer collects', () => {
  it('is done with: the job is closed, its certificate issued and counted from the day', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-70001-E' });
    const { certificate } = await fetch(jobId);
    const job = await jobNow(jobId);
    expect(job).toMatchObject({ stage: 'closed', carrier: '', carrierReference: '', closedAt: NOW });
    expect(job.events.map(({ toStage }) => toStage).slice(-2)).toEqual(['sent-back', 'closed']);
    expect(isCollected(job.events)).toBe(true);
    const [line] = job.certificates[0]?.lines ?? [];
    expect(line && dayFromDate(line.startsOn)).toBe('2026-11-25');
    expect(certificate).toMatchObject({ revision: 1 });
    const left = job.events.findLast(({ kind }) => kind === 'sent-back');
    expect(eventLine('sent-back', left?.data)).toBe('Collected by the customer');
  });

  it('takes along a battery that no carrier takes', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-70002-E' });
    const { version } = await jobNow(jobId);
    const parcel = { grams: null, sides: null, valueMinor: null, battery: 'unsound' } as const;
    await keepParcel({ jobId, version, parcel, actor: BENCH, now: NOW });
    await fetch(jobId);
    expect((await jobNow(jobId)).stage).toBe('closed');
  });

  it('is told what follows, and nothing of a carrier', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-70003-E' });
    await fetch(jobId);
    const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'unit-sent-back' } });
    const { subject, text } = await drawMail(mail);
    expect(subject).toMatch(/^Collected: job /);
    expect(text).toContain('You collected it from us today.');
    expect(text).toContain('open a claim with its number');
    expect(text).not.toMatch(/carrier|on its way|parcel/i);
  });

  it('gives back no days of post on a claim', async () => {
    const serial = 'HW2-70004-E';
    const { jobId } = await makeReady(world, NOW, { serial });
    const { certificate } = await fetch(jobId);
    const opened = new Date('2027-02-01T10:00:00Z');
    const claim = await makeClaim({ number: certificate?.number ?? '', now: opened, serial });
    await takeIn(claim.jobId, opened);
    await moveTo(claim.jobId, 'assess', opened);
    await ruleClaim(claim, { cause: 'workmanship', now: opened });
    await moveTo(claim.jobId, 'start-bench', opened);
    await proveJob(claim.jobId, world, opened);
    await fetch(claim.jobId, new Date('2027-02-11T10:00:00Z'));
    const held = await db.heldInterval.findUniqueOrThrow({ where: { claimNumber: claim.number } });
    expect([dayFromDate(held.fromDay), dayFromDate(held.toDay)]).toEqual(['2027-02-01', '2027-02-11']);
  });

  it('has the day for its start and its return, whatever the policy says of parcels', () => {
    const on = day('2026-11-25');
    for (const event of START_EVENTS) expect(startDay(event, on, ENGLAND, 0)).toBe(on);
    expect(returnDay(on, ENGLAND, 0)).toBe(on);
    expect(returnDay(on, ENGLAND, 5)).toBe('2026-12-02');
  });

  it('is not sent twice: of two presses the second is told that the job changed', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-70005-E' });
    const { version } = await jobNow(jobId);
    const press = () =>
      dispatch({ jobId, version, handover: { by: 'collected' }, postage: 0, actor: BENCH, now: NOW });
    await press();
    await expect(press()).rejects.toMatchObject({ code: 'conflict' });
  });
});

it('a unit that leaves with a carrier of which nothing is said does not leave', async () => {
  const { jobId } = await makeReady(world, NOW, { serial: 'HW2-70006-E' });
  const { version } = await jobNow(jobId);
  const handover = { by: 'carrier', carrier: 'Harbour Post', carrierReference: '' } as const;
  const sent = dispatch({ jobId, version, handover, postage: 0, actor: BENCH, now: NOW });
  await expect(sent).rejects.toThrow('or say that the customer collects it');
});
