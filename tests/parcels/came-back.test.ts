import { beforeAll, describe, expect, it } from 'vitest';
import { day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { cameBack } from '@/lib/jobs/came-back';
import { expectedParcels, findArrival } from '@/lib/jobs/find-arrival';
import { moveJob } from '@/lib/jobs/move';
import { recordPayment } from '@/lib/jobs/record-payment';
import { waitsForAddress } from '@/lib/jobs/rules/handover';
import { sendMessage } from '@/lib/jobs/send-message';
import { readToday } from '@/lib/jobs/today';
import { sendUnclaimedNotices } from '@/lib/jobs/unclaimed-notices';
import { drawMail } from '@/lib/mail/draw';
import { correctReference } from '@/lib/parcels/correct-reference';
import { listDispatch } from '@/lib/parcels/list-dispatch';
import { readCoverEnds } from '@/lib/warranty/stored-cover-ends';
import { useDatabase } from '@/tests/database';
import { jobNow, makeClaim, moveTo, proveJob, ruleClaim, sendBack, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { makeReady } from './ready';

useDatabase();

const SENT = new Date('2026-11-25T10:00:00Z');
const BACK = new Date('2026-12-07T10:00:00Z');
const AGAIN = new Date('2026-12-09T10:00:00Z');
const REASON = 'No such number in the street.';

let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeAll(async () => {
  world = await makeWorkshop(SENT);
  await db.policyVersion.updateMany({ data: { startEvent: 'delivered' } });
}, 60_000);

async function sent(serial: string) {
  const { jobId } = await makeReady(world, SENT, { serial });
  await sendBack(jobId, SENT);
  return jobId;
}

async function back(jobId: string, now = BACK) {
  const { version } = await jobNow(jobId);
  await cameBack({ jobId, version, reason: REASON, actor: BENCH, now });
}

async function mailText(jobId: string, template: string): Promise<string> {
  const mail = await db.mail.findFirstOrThrow({ where: { jobId, template }, orderBy: { queuedAt: 'desc' } });
  return (await drawMail(mail)).text;
}

describe('a parcel that the post brings back', () => {
  it('is found by its serial, is ready again, and its customer is asked for the address', async () => {
    const jobId = await sent('HW2-80001-F');
    await moveTo(jobId, 'close', BACK);
    const found = await findArrival('HW2-80001-F', await expectedParcels(BACK));
    expect(found).toMatchObject({ state: 'went-back', jobs: [{ stage: 'closed' }] });
    await back(jobId);
    const job = await jobNow(jobId);
    expect(job).toMatchObject({ stage: 'ready', sentBackAt: null, closedAt: null, carrier: '' });
    expect(waitsForAddress(job.events)).toBe(true);
    const told = await mailText(jobId, 'parcel-came-back');
    expect(told).toContain(REASON);
    expect(told).toContain('Your certificate stands as it was issued');
    expect(told).toContain('Goes back to');
  });

  it('goes out once more with the certificate it has, and the days of the detour are given back', async () => {
    const jobId = await sent('HW2-80002-F');
    const [before] = (await jobNow(jobId)).certificates;
    await back(jobId);
    const { certificate } = await sendBack(jobId, AGAIN);
    expect(certificate).toBeNull();
    const job = await jobNow(jobId);
    expect(job.stage).toBe('sent-back');
    expect(job.certificates.map(({ id }) => id)).toEqual([before?.id]);
    // Cover was counted from 2 December, five working days after 25 November; sent again on the 9th it is the 16th.
    expect(before && dayFromDate(before.lines[0]?.startsOn ?? SENT)).toBe('2026-12-02');
    const held = await db.heldInterval.findUniqueOrThrow({ where: { claimNumber: job.number } });
    expect([dayFromDate(held.fromDay), dayFromDate(held.toDay)]).toEqual(['2026-12-02', '2026-12-16']);
    const stated = before ? dayFromDate(before.endsOn) : '';
    const end = before && (await readCoverEnds([before])).get(before.id)?.end;
    expect([stated, end]).toEqual(['2027-12-02', '2027-12-16']);
    const told = await mailText(jobId, 'unit-sent-back');
    expect(told).toContain('once more');
    expect(told).toContain('until the end of Thursday');
    // And a third time, the same days are made longer.
    await back(jobId, new Date('2026-12-14T10:00:00Z'));
    await sendBack(jobId, new Date('2026-12-15T10:00:00Z'));
    const longer = await db.heldInterval.findUniqueOrThrow({ where: { claimNumber: job.number } });
    expect(dayFromDate(longer.toDay)).toBe('2026-12-22');
  });

  it('may not be worked on under the certificate it has', async () => {
    const jobId = await sent('HW2-80003-F');
    await back(jobId);
    const { version } = await jobNow(jobId);
    const opened = moveJob({ jobId, version, move: 'reopen-work', note: '', actor: BENCH, now: BACK });
    await expect(opened).rejects.toThrow('its papers stand');
  });

  it('gets notices from that day on until its customer answers', async () => {
    const jobId = await sent('HW2-80004-F');
    await back(jobId);
    const left = { state: 'sent', sentAt: BACK };
    await db.mail.updateMany({
      where: { jobId, template: { in: ['unit-ready', 'parcel-came-back'] } },
      data: left,
    });
    expect(await sendUnclaimedNotices(new Date('2026-12-27T10:00:00Z'))).toBe(0);
    expect(await sendUnclaimedNotices(new Date('2026-12-28T10:00:00Z'))).toBe(1);
    expect((await jobNow(jobId)).stage).toBe('unclaimed');
    const answer = { text: 'I have moved to 4 Sail Loft.', actor: { kind: 'customer' } } as const;
    await sendMessage({ jobId, ...answer, now: new Date('2026-12-29T10:00:00Z') });
    expect((await jobNow(jobId)).stage).toBe('ready');
    expect(await sendUnclaimedNotices(new Date('2027-03-29T10:00:00Z'))).toBe(0);
  });

  it('is not to be sent again before its customer has answered, neither on Today nor on Dispatch', async () => {
    const jobId = await sent('HW2-80015-F');
    const { number } = await jobNow(jobId);
    await back(jobId);
    const at = new Date('2026-12-10T10:00:00Z');
    const onToday = async () => {
      const { lists } = await readToday(at);
      return [...lists.onUs, ...lists.onCustomer].find((row) => row.job.number === number);
    };
    const onDispatch = async () => {
      const { mayGo, asked } = await listDispatch({ now: at });
      return [mayGo, asked].map((rows) => rows.some((row) => row.number === number));
    };
    const { wait, job } = (await onToday()) ?? {};
    expect([wait, job?.cameBackOn]).toEqual([
      { who: 'customer', step: 'confirm-address' },
      dayInZone(BACK, 'Europe/London'),
    ]);
    expect(await onDispatch()).toEqual([false, true]);
    await sendMessage({ jobId, text: 'It is 4 Sail Loft.', actor: { kind: 'customer' }, now: at });
    expect((await onToday())?.wait).toEqual({ who: 'us', step: 'send-back' });
    expect(await onDispatch()).toEqual([true, false]);
  });

  it('is said to leave by the mail about a payment once its customer has answered, and not before', async () => {
    const jobId = await sent('HW2-80016-F');
    await back(jobId);
    const pay = (amount: number) =>
      recordPayment({
        jobId,
        amount,
        method: 'card',
        reference: '',
        receivedOn: day('2026-12-08'),
        actor: BENCH,
        now: AGAIN,
      });
    await pay(500);
    expect(await mailText(jobId, 'payment-received')).not.toContain('We post it');
    await sendMessage({ jobId, text: 'It is 4 Sail Loft.', actor: { kind: 'customer' }, now: AGAIN });
    await pay(600);
    const mail = { jobId, template: 'payment-received' };
    const last = await db.mail.findFirstOrThrow({ where: mail, orderBy: { id: 'desc' } });
    expect(last.data).toMatchObject({ amount: 600, isReady: true });
  });

  it('waits for no address once the owner has decided to send it all the same', async () => {
    const jobId = await sent('HW2-80014-F');
    await back(jobId);
    const { events } = await jobNow(jobId);
    const decided = (decision: string) => ({
      kind: 'unclaimed-decided',
      data: { decision, note: 'Sent to the address we have.', until: null },
    });
    expect(waitsForAddress([...events, decided('send-back-unpaid')])).toBe(false);
    expect(waitsForAddress([...events, decided('keep-longer')])).toBe(true);
  });

  it('ends a stay on a claim with the new return, costs its postage more, and opens no ruling', async () => {
    const serial = 'HW2-80005-F';
    const { jobId: first } = await makeReady(world, SENT, { serial });
    const { certificate } = await sendBack(first, SENT);
    const opened = new Date('2027-02-01T10:00:00Z');
    const claim = await makeClaim({ number: certificate?.number ?? '', now: opened, serial });
    const { jobId } = claim;
    await takeIn(jobId, opened);
    await moveTo(jobId, 'assess', opened);
    await ruleClaim(claim, { cause: 'workmanship', now: opened });
    await moveTo(jobId, 'start-bench', opened);
    await proveJob(jobId, world, opened);
    await sendBack(jobId, new Date('2027-02-11T10:00:00Z'));
    await back(jobId, new Date('2027-02-22T10:00:00Z'));
    const again = await sendBack(jobId, new Date('2027-02-23T10:00:00Z'));
    expect(again.certificate).toBeNull();
    const held = await db.heldInterval.findUniqueOrThrow({ where: { claimNumber: claim.number } });
    expect([dayFromDate(held.fromDay), dayFromDate(held.toDay)]).toEqual(['2027-02-01', '2027-03-02']);
    expect(await db.claim.findUniqueOrThrow({ where: { id: claim.claimId } })).toMatchObject({
      state: 'closed',
      costPostageMinor: 840,
      closedAt: new Date('2027-02-11T10:00:00Z'),
    });
  });
});

describe('a wrong reference', () => {
  it('is put right once the parcel has left, in the history and with the customer', async () => {
    const jobId = await sent('HW2-80006-F');
    const correct = async (carrierReference: string) =>
      correctReference({
        jobId,
        version: (await jobNow(jobId)).version,
        carrierReference,
        actor: BENCH,
        now: BACK,
      });
    await expect(correct('RR473124828GB')).rejects.toMatchObject({ field: 'carrierReference' });
    await expect(correct('HP-2201')).rejects.toThrow('kept already');
    await correct('HP-2210');
    const job = await jobNow(jobId);
    expect(job).toMatchObject({ stage: 'sent-back', carrierReference: 'HP-2210' });
    expect(job.events.at(-1)).toMatchObject({ kind: 'reference-corrected', data: { reference: 'HP-2210' } });
    expect(await mailText(jobId, 'reference-corrected')).toContain('HP-2210');
    await back(jobId);
    await expect(correct('HP-2211')).rejects.toMatchObject({ code: 'conflict' });
  });
});
