import { describe, expect, it } from 'vitest';
import { recordCheck } from '@/lib/bench/record-check';
import { day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { readFile } from '@/lib/files/store';
import { arrive } from '@/lib/jobs/arrive';
import { moveJob, type PlainMove } from '@/lib/jobs/move';
import { recordFinding } from '@/lib/jobs/record-finding';
import { recordPayment } from '@/lib/jobs/record-payment';
import { recordWork } from '@/lib/jobs/record-work';
import { readJob } from '@/lib/jobs/records';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { writeOffer } from '@/lib/quotes/write-offer';
import { dispatch } from '@/lib/warranty/dispatch';
import { isGenuine } from '@/lib/warranty/genuine';
import { openClaim } from '@/lib/warranty/open-claim';
import { readChain } from '@/lib/warranty/records';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { useDatabase } from '@/tests/database';
import { ADDRESS, makeBooking, SERIAL } from '@/tests/makers/job';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

async function current(jobId: string) {
  const job = await readJob({ id: jobId });
  if (!job) throw new Error('no such job');
  return job;
}

async function move(jobId: string, key: PlainMove, now: Date) {
  await moveJob({ jobId, version: (await current(jobId)).version, move: key, note: '', actor: BENCH, now });
}

async function proveAndFinish(jobId: string, world: { voltage: string; tilt: string }, now: Date) {
  await recordWork({ jobId, text: 'Socket replaced, anchors soldered', minutes: 45, actor: BENCH, now });
  await move(jobId, 'prove', now);
  await recordCheck({ jobId, checkId: world.voltage, given: { reading: 5.02 }, note: '', actor: BENCH, now });
  await recordCheck({ jobId, checkId: world.tilt, given: { tick: true }, note: '', actor: BENCH, now });
  await move(jobId, 'pass-checks', now);
}

describe('the whole main job', () => {
  it('goes from booking to a certificate, and from a claim to its second revision', async () => {
    const booked = new Date('2026-11-25T09:00:00Z');
    const world = await makeWorkshop(booked);
    const { jobId } = await makeBooking({ repairId: world.repairId, now: booked });

    const arrived = new Date('2026-11-27T10:00:00Z');
    const arrival = await arrive({
      jobId,
      version: 1,
      serial: 'hw2 10480 k',
      arrived: [],
      extra: ['Strap'],
      photos: [],
      actor: BENCH,
      now: arrived,
    });
    expect(arrival.comparison).toBe('same');
    expect(arrival.differences).toEqual([
      'Power supply was not in the parcel',
      'Strap came with it and is kept with the unit',
    ]);

    await move(jobId, 'assess', arrived);
    await recordFinding({ jobId, text: 'Two lifted pads', photos: [], actor: BENCH, now: arrived });
    const before = await current(jobId);
    await writeOffer({
      jobId,
      version: before.version,
      lines: [
        { kind: 'labour', description: 'USB-C socket replaced', amount: 7200, category: 'S', rateBps: 2000 },
        { kind: 'labour', description: 'Two pads rebuilt', amount: 2400, category: 'S', rateBps: 2000 },
      ],
      reason: 'Two pads are lifted.',
      onYes: 'We rebuild them.',
      onNo: 'We send it back.',
      actor: BENCH,
      now: arrived,
    });
    await move(jobId, 'ask-approval', arrived);
    await decideOffer({
      jobId,
      revision: 2,
      decision: 'accepted',
      actor: { kind: 'customer' },
      now: arrived,
    });
    await proveAndFinish(jobId, world, new Date('2026-12-01T15:00:00Z'));

    const sent = new Date('2026-12-03T16:00:00Z');
    const goOut = async () =>
      dispatch({
        jobId,
        version: (await current(jobId)).version,
        handover: { by: 'carrier', carrier: 'Harbour Post', carrierReference: 'RR473124829GB' },
        postage: 0,
        actor: BENCH,
        now: sent,
      });
    await expect(goOut()).rejects.toThrow('something to pay');
    await recordPayment({
      jobId,
      amount: 9600,
      method: 'bank transfer',
      reference: '',
      receivedOn: day('2026-12-02'),
      actor: BENCH,
      now: sent,
    });
    const { certificate } = await goOut();
    if (!certificate) throw new Error('no certificate was issued');
    const chain = await readChain(certificate.number);
    if (!chain) throw new Error('no chain');
    expect(dayFromDate(chain.inForce.endsOn)).toBe('2027-12-03');
    expect(chain.inForce.lines.map(({ key, description }) => [key, description])).toEqual([
      ['work-1', 'USB-C socket replaced'],
      ['work-2', 'Two pads rebuilt'],
    ]);
    expect(await isGenuine(chain.inForce)).toBe(true);
    expect(
      Buffer.from(await readFile(chain.inForce.fileKey))
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');

    const claimedAt = new Date('2027-02-01T08:00:00Z');
    const ask = (serial: string) =>
      openClaim({
        certificateNumber: certificate.number,
        revision: 1,
        serial,
        symptom: 'Does not charge',
        details: '',
        batteryAnswer: 'healthy',
        dataAnswer: 'saved',
        address: ADDRESS,
        photos: [],
        now: claimedAt,
      });
    const other = await ask('ZZ-0000');
    expect(other.opened ? '' : other.assessment.answer).toBe('other-unit');
    const claim = await ask(SERIAL);
    expect(claim.opened).toBe(true);
    const second = await ask(SERIAL);
    expect(second.opened ? '' : second.assessment.answer).toBe('already-open');

    const claimJob = await db.job.findFirstOrThrow({
      where: { kind: 'claim' },
      include: { claim: true, quotes: { include: { revisions: true } } },
    });
    expect(claimJob.quotes[0]?.revisions[0]?.grossMinor).toBe(0);
    const back = new Date('2027-02-08T10:00:00Z');
    await arrive({
      jobId: claimJob.id,
      version: (await current(claimJob.id)).version,
      serial: SERIAL,
      arrived: [],
      extra: [],
      photos: [],
      actor: BENCH,
      now: back,
    });
    await move(claimJob.id, 'assess', back);
    await expect(move(claimJob.id, 'start-bench', back)).rejects.toThrow('rule on it first');
    const ruling = await ruleOnClaim({
      claimId: claimJob.claim?.id ?? '',
      jobVersion: (await current(claimJob.id)).version,
      cause: 'workmanship',
      alsoFound: null,
      isEvidenceClear: true,
      mayTell: true,
      isLetIn: false,
      reasonText: 'A joint of ours cracked.',
      lesson: 'Pull on the plug when proving',
      actor: BENCH,
      now: back,
    });
    expect(ruling).toEqual({ ruling: 'covered', isFinal: true });
    await move(claimJob.id, 'start-bench', back);
    await proveAndFinish(claimJob.id, world, back);
    const result = await dispatch({
      jobId: claimJob.id,
      version: (await current(claimJob.id)).version,
      handover: { by: 'carrier', carrier: 'Harbour Post', carrierReference: 'HP-2201' },
      postage: 420,
      actor: BENCH,
      now: new Date('2027-02-11T15:00:00Z'),
    });
    expect(result.certificate).toEqual({ number: certificate.number, revision: 2 });
    const renewed = await readChain(certificate.number);
    // Sent back on 11 February 2027, with five working days of post until the 18th: 1 to 18 February is 17 days out of the
    // customer's hands; 3 December 2027 + 17 days.
    expect(renewed && dayFromDate(renewed.inForce.endsOn)).toBe('2027-12-20');
    expect(renewed?.revisions[0]?.supersededAt).not.toBeNull();
    expect(renewed && (await isGenuine(renewed.inForce))).toBe(true);
    const closed = await db.claim.findFirstOrThrow();
    expect(closed).toMatchObject({ state: 'closed', costMinutes: 45, costPostageMinor: 420 });

    const mails = await db.mail.findMany({
      orderBy: [{ queuedAt: 'asc' }, { id: 'asc' }],
      select: { template: true },
    });
    expect(mails.map((mail) => mail.template)).toEqual([
      'job-booked',
      'unit-arrived',
      'approval-asked',
      'approval-recorded',
      'unit-ready',
      'payment-received',
      'unit-sent-back',
      'claim-opened',
      'unit-arrived',
      'claim-ruled',
      'unit-ready',
      'unit-sent-back',
    ]);
  }, 60_000);
});
