import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { historyLine } from '@/lib/jobs/changes-since';
import { factsOf } from '@/lib/jobs/facts';
import { drawMail } from '@/lib/mail/draw';
import { type ClaimAtDesk, openClaimAtDesk } from '@/lib/warranty/open-claim-at-desk';
import { readChain } from '@/lib/warranty/records';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { useDatabase } from '@/tests/database';
import { ADDRESS, SERIAL } from '@/tests/makers/job';
import {
  jobNow,
  makeCertificate,
  makeClaim,
  moveTo,
  proveJob,
  sendBack,
  somePhoto,
} from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

// P12M from 3 December 2026 ends on Friday 3 December 2027; the policy of the makers gives 7 days of grace.
const SENT = new Date('2026-12-03T16:00:00Z');
const RUNNING = new Date('2027-03-01T09:00:00Z');
const LAST_OF_GRACE = new Date('2027-12-10T23:30:00Z');
const AFTER_GRACE = new Date('2027-12-11T00:30:00Z');

let number = '';
let world: Awaited<ReturnType<typeof makeWorkshop>>;
const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  const number = (await makeCertificate(world, SENT)).number;
  return { number, world };
});
beforeEach(async () => {
  ({ number, world } = await begin());
}, 60_000);

function told(o: Partial<ClaimAtDesk> = {}): ClaimAtDesk {
  return {
    certificateNumber: number,
    serial: SERIAL,
    symptom: 'Does not charge',
    details: '',
    batteryAnswer: 'healthy',
    dataAnswer: 'saved',
    address: ADDRESS,
    photos: [],
    isHere: false,
    extra: [],
    reason: '',
    actor: BENCH,
    now: RUNNING,
    ...o,
  };
}

async function opened(o: Partial<ClaimAtDesk> = {}) {
  const { claimNumber } = await openClaimAtDesk(told(o));
  return db.claim.findUniqueOrThrow({ where: { number: claimNumber } });
}

async function letter(jobId: string, template: string) {
  const mail = await db.mail.findFirstOrThrow({ where: { jobId, template } });
  return { data: mail.data, text: (await drawMail(mail)).text.replace(/\s+/g, ' ') };
}

async function nothingKept() {
  expect(await db.claim.count()).toBe(0);
  expect(await db.job.count({ where: { kind: 'claim' } })).toBe(0);
  expect(await db.mail.count({ where: { template: 'claim-opened' } })).toBe(0);
}

describe('a claim told by telephone', () => {
  it('is booked free of charge, and the customer is told who opened it', async () => {
    const claim = await opened({ symptom: 'other', details: 'It hums.' });
    const job = await jobNow(claim.jobId);
    expect(job).toMatchObject({ kind: 'claim', stage: 'booked', problem: 'Something else. It hums.' });
    expect(factsOf(job)).toMatchObject({ isPriceAgreed: true, owed: 0 });
    expect(job.quotes[0]?.revisions[0]?.decidedBy).toBe('certificate');
    expect(job.events.map(historyLine)).toEqual(['Booked', 'Claim opened on the certificate']);
    expect(job.events.every(({ actorId }) => actorId === BENCH.id)).toBe(true);
    const { text } = await letter(claim.jobId, 'claim-opened');
    expect(text).toContain('We opened it for you');
    expect(text).toContain('packing slip');
  });

  it('needs no photo of a serial that is close: it is compared when it comes', async () => {
    const claim = await opened({ serial: 'HW2-1O48O-K' });
    expect(claim.isLate).toBe(false);
    expect((await letter(claim.jobId, 'claim-opened')).data).toMatchObject({ isSerialClose: true });
  });

  it('keeps photos with the claim', async () => {
    const { jobId } = await opened({ photos: [somePhoto()] });
    expect((await jobNow(jobId)).photos.map(({ purpose }) => purpose)).toEqual(['claim']);
  });

  it('says not to post what must not be posted, unless the unit is here', async () => {
    const told = await opened({ batteryAnswer: 'swollen' });
    expect((await letter(told.jobId, 'claim-opened')).text).toContain('Please do not post the unit');
  });

  it('says nothing of the post where the unit is here', async () => {
    const came = await opened({ batteryAnswer: 'swollen', isHere: true });
    expect((await letter(came.jobId, 'claim-opened')).text).not.toContain('do not post');
  });

  it.each([
    ['another unit', { serial: 'TW7-4410-92' }, { code: 'invalid', field: 'serial' }],
    ['a symptom of no list', { symptom: 'Screen cracked' }, { code: 'invalid', field: 'symptom' }],
    ['a number of nobody', { certificateNumber: 'W00000000' }, { code: 'not-found' }],
  ] as const)('is refused for %s', async (_name, o, refusal) => {
    await expect(openClaimAtDesk(told(o))).rejects.toMatchObject(refusal);
    await nothingKept();
  });

  it('is refused where the customer opened one before', async () => {
    await makeClaim({ number, now: RUNNING });
    await expect(openClaimAtDesk(told())).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringMatching(/open already: C-\w{4}-\w{4}\.$/),
    });
    expect(await db.claim.count()).toBe(1);
  });
});

describe('a unit that came without a claim', () => {
  it('is taken in with it, with a promise, its photos and what came', async () => {
    const claim = await opened({ isHere: true, extra: ['Strap'], photos: [somePhoto()] });
    const job = await jobNow(claim.jobId);
    expect(job).toMatchObject({ stage: 'arrived', isSerialSettled: true, serialComparison: 'same' });
    expect(job.promisedOn).not.toBeNull();
    expect(job.photos.map(({ purpose }) => purpose)).toEqual(['arrival']);
    expect(job.accessories).toMatchObject([{ name: 'Strap', isTold: false, isArrived: true }]);
    expect(job.events.map(({ kind }) => kind)).toEqual(['booked', 'claim-opened', 'unit-arrived']);
    const first = await letter(claim.jobId, 'claim-opened');
    expect(first.data).toMatchObject({ byUs: true, isHere: true });
    expect(first.text).toContain('Your unit is here already, so there is nothing to post');
    expect(first.text).not.toContain('packing slip');
    const second = await letter(claim.jobId, 'unit-arrived');
    expect(second.text).toContain('we opened a claim for you');
    expect(second.text).not.toContain('as you booked it');
    expect(second.text).toContain('Our ruling comes within');
  });

  it('waits for a person where its serial is close', async () => {
    const claim = await opened({ isHere: true, serial: 'HW2-1O48O-K' });
    expect(await jobNow(claim.jobId)).toMatchObject({
      isSerialSettled: false,
      serialComparison: 'likely-misread',
    });
  });

  it('goes on the bench without a yes of the customer once it is ruled covered', async () => {
    const claim = await opened({ isHere: true });
    await moveTo(claim.jobId, 'assess', RUNNING);
    await rule(claim, null, RUNNING);
    await moveTo(claim.jobId, 'start-bench', RUNNING);
    expect((await jobNow(claim.jobId)).stage).toBe('on-bench');
  });
});

describe('a claim after cover had ended', () => {
  it('is opened by anybody on the last day of grace, as late', async () => {
    expect((await opened({ now: LAST_OF_GRACE })).isLate).toBe(true);
  });

  it('is the owner’s alone after it, with a reason', async () => {
    const late = { now: AFTER_GRACE, reason: 'Known for years, and one day over.' };
    await expect(openClaimAtDesk(told(late))).rejects.toMatchObject({ code: 'not-allowed' });
    await expect(openClaimAtDesk(told({ ...late, actor: OWNER, reason: '' }))).rejects.toMatchObject({
      code: 'invalid',
      field: 'reason',
    });
    await nothingKept();
    const claim = await opened({ ...late, actor: OWNER });
    expect(claim.isLate).toBe(true);
    const line = (await jobNow(claim.jobId)).events.map(historyLine)[1];
    expect(line).toBe('Claim opened after cover had ended: Known for years, and one day over.');
    const { text } = await letter(claim.jobId, 'claim-opened');
    expect(text).toContain('The cover had ended before');
    expect(text).not.toContain('Known for years');
  });

  it('is late with a close serial too', async () => {
    const serial = 'HW2-1O48O-K';
    const claim = await opened({ now: AFTER_GRACE, reason: 'Let in.', actor: OWNER, serial });
    expect(claim.isLate).toBe(true);
    expect((await letter(claim.jobId, 'claim-opened')).data).toMatchObject({ isSerialClose: true });
  });

  it('renews the line that had ended once it was let in, ruled covered and repaired', async () => {
    const claim = await opened({ now: AFTER_GRACE, reason: 'Let in.', actor: OWNER, isHere: true });
    await moveTo(claim.jobId, 'assess', AFTER_GRACE);
    await rule(claim, true, AFTER_GRACE);
    await moveTo(claim.jobId, 'start-bench', AFTER_GRACE);
    await proveJob(claim.jobId, world, AFTER_GRACE);
    await sendBack(claim.jobId, AFTER_GRACE);
    const chain = await readChain(number);
    expect(chain?.inForce.revision).toBe(2);
    expect(chain?.inForce.lines[0]?.renewedUntil).not.toBeNull();
  });
});

async function rule(claim: { id: string; jobId: string }, isLetIn: boolean | null, now: Date) {
  await ruleOnClaim({
    claimId: claim.id,
    jobVersion: (await jobNow(claim.jobId)).version,
    cause: 'workmanship',
    alsoFound: null,
    isEvidenceClear: true,
    mayTell: true,
    isLetIn,
    reasonText: 'A joint of ours cracked.',
    lesson: '',
    actor: BENCH,
    now,
  });
}
