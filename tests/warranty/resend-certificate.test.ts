import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { db } from '@/lib/db/client';
import { findJobByToken } from '@/lib/jobs/private-link';
import { drawMail } from '@/lib/mail/draw';
import { openClaim } from '@/lib/warranty/open-claim';
import { resendCertificate } from '@/lib/warranty/resend-certificate';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { useDatabase } from '@/tests/database';
import { ADDRESS, makeBooking, SERIAL } from '@/tests/makers/job';
import { jobNow, makeCertificate, moveTo, proveJob, sendBack, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-11-20T10:00:00Z');
const NOW = new Date('2026-11-26T09:00:00Z');
const ON_FILE = 'maren.holt@example.org';
/** Bought the second recorder used, and opened a claim on its certificate. */
const NEW_OWNER = { ...ADDRESS, name: 'Piet Lund', email: 'piet.lund@example.net' };

type Made = { number: string; jobId: string; jobNumber: string };
let world: Awaited<ReturnType<typeof makeWorkshop>>;
let first: Made;
let second: Made;
let running: { jobId: string; number: string };
let claimJob: { id: string; number: string };

beforeAll(async () => {
  world = await makeWorkshop(SENT);
  const made = async (serial: string): Promise<Made> => {
    const certificate = await makeCertificate(world, SENT, serial);
    return { ...certificate, jobNumber: (await jobNow(certificate.jobId)).number };
  };
  first = await made(SERIAL);
  second = await made('HW2-77001-A');
  claimJob = await reissued(world, second.number);
  running = await makeBooking({ ...world, now: SENT, serial: 'HW2-88001-A' });
}, 120_000);

beforeEach(async () => {
  await db.mail.deleteMany({ where: { template: { in: ['certificate-copy', 'link-copy'] } } });
});

/** A claim of the new owner, repaired under cover and sent back to them with revision 2. */
async function reissued(world: Awaited<ReturnType<typeof makeWorkshop>>, number: string) {
  const opened = await openClaim({
    certificateNumber: number,
    revision: null,
    serial: 'HW2-77001-A',
    symptom: 'Does not charge',
    details: '',
    batteryAnswer: 'healthy',
    dataAnswer: 'saved',
    address: NEW_OWNER,
    photos: [],
    now: SENT,
  });
  if (!opened.opened) throw new Error('no claim was opened');
  const claim = await db.claim.findUniqueOrThrow({ where: { number: opened.claimNumber } });
  await takeIn(claim.jobId, SENT);
  await moveTo(claim.jobId, 'assess', SENT);
  await ruleOnClaim({
    claimId: claim.id,
    jobVersion: (await jobNow(claim.jobId)).version,
    cause: 'workmanship',
    alsoFound: null,
    isEvidenceClear: true,
    mayTell: true,
    isLetIn: false,
    reasonText: 'A joint of ours cracked.',
    lesson: '',
    actor: BENCH,
    now: SENT,
  });
  await moveTo(claim.jobId, 'start-bench', SENT);
  await proveJob(claim.jobId, world, SENT);
  await sendBack(claim.jobId, SENT);
  return { id: claim.jobId, number: opened.jobNumber };
}

async function ask(o: { number?: string; serial?: string; email: string }) {
  await resendCertificate({ number: null, serial: null, now: NOW, ...o });
  return db.mail.findMany({
    where: { template: 'certificate-copy' },
    select: { toAddress: true, jobId: true, data: true, template: true, state: true },
  });
}

describe('a lost certificate goes to the address on file', () => {
  it.each([
    ['the certificate number', () => ({ number: first.number })],
    ['the job number', () => ({ number: first.jobNumber })],
    ['the serial', () => ({ serial: SERIAL })],
    ['the serial spelt otherwise', () => ({ serial: 'hw2 10480 k' })],
    ['the number, and a serial that is wrong', () => ({ number: first.number, serial: 'ZZ-1' })],
  ])('asked for by %s', async (_name, given) => {
    expect(await ask({ ...given(), email: ON_FILE })).toMatchObject([
      {
        toAddress: ON_FILE,
        jobId: first.jobId,
        state: 'queued',
        data: { certificateNumber: first.number, revision: 1 },
      },
    ]);
  });

  it('with the day it covers until, where days were given back since', async () => {
    const { claimNumber } = await db.heldInterval.create({
      data: {
        certificateNumber: first.number,
        claimNumber: 'CHELD0001',
        fromDay: new Date('2026-12-01'),
        toDay: new Date('2026-12-15'),
      },
    });
    const [mail] = await ask({ number: first.number, email: ON_FILE });
    await db.heldInterval.delete({ where: { claimNumber } });
    const { endsOn } = await db.certificate.findFirstOrThrow({ where: { number: first.number } });
    const { coveredUntil = '' } = z.object({ coveredUntil: z.string() }).partial().parse(mail?.data);
    expect(new Date(coveredUntil).getTime() - endsOn.getTime()).toBe(14 * 86_400_000);
  });

  it('as it stands on file, however it was typed', async () => {
    const mails = await ask({ number: first.number, email: ' Maren.HOLT@Example.ORG ' });
    expect(mails.map((mail) => mail.toAddress)).toEqual([ON_FILE]);
  });

  it('once, when number and serial name the same certificate', async () => {
    expect(await ask({ number: first.number, serial: SERIAL, email: ON_FILE })).toHaveLength(1);
  });

  it('with the private link of its job, which shows the certificate', async () => {
    const [mail] = await ask({ number: first.number, email: ON_FILE });
    if (!mail) throw new Error('no mail was queued');
    const { text, html } = await drawMail(mail);
    const [, token = ''] = /\/job\/([A-Za-z0-9_-]{43})\b/.exec(text) ?? [];
    expect(await findJobByToken(token)).toMatchObject({ jobId: first.jobId });
    expect(html).toContain(`/job/${token}"`);
  });

  it('with a link that opens the job, even where all had been withdrawn', async () => {
    await db.privateLink.updateMany({ where: { jobId: first.jobId }, data: { revokedAt: NOW } });
    const [mail] = await ask({ number: first.number, email: ON_FILE });
    if (!mail) throw new Error('no mail was queued');
    const [, token = ''] = /\/job\/([A-Za-z0-9_-]{43})\b/.exec((await drawMail(mail)).text) ?? [];
    expect(await findJobByToken(token)).toMatchObject({ jobId: first.jobId });
  });
});

describe('nothing is sent', () => {
  it.each([
    ['to an address that is not on file', () => ({ number: first.number, email: 'someone@example.org' })],
    [
      'for a pattern instead of an address',
      () => ({ number: first.number, email: 'maren_holt@example.org' }),
    ],
    ['for a number of somebody else', () => ({ number: claimJob.number, email: ON_FILE })],
    ['for an unknown number', () => ({ number: 'W00000000', email: ON_FILE })],
    ['for an unknown serial', () => ({ serial: 'HD1-9', email: ON_FILE })],
    ['for a serial that is only close', () => ({ serial: 'HW2-1O480-K', email: ON_FILE })],
    ['for neither number nor serial', () => ({ email: ON_FILE })],
    ['for a serial without a character', () => ({ serial: ' - ', email: ON_FILE })],
  ])('%s', async (_name, given) => {
    expect(await ask(given())).toEqual([]);
  });
});

describe('a certificate that was reissued for its new owner', () => {
  it('is sent to the new owner with the revision in force', async () => {
    expect(await ask({ number: second.number, email: NEW_OWNER.email })).toMatchObject([
      {
        toAddress: NEW_OWNER.email,
        jobId: claimJob.id,
        data: { certificateNumber: second.number, revision: 2 },
      },
    ]);
  });

  it('leads the first owner to their own job, never to the new owner’s', async () => {
    expect(await ask({ serial: 'HW2-77001-A', email: ON_FILE })).toMatchObject([
      {
        toAddress: ON_FILE,
        jobId: second.jobId,
        data: { certificateNumber: second.number, revision: 1 },
      },
    ]);
  });
});

describe('the private link of a job', () => {
  const linksSent = () => db.mail.findMany({ where: { template: 'link-copy' } });

  it.each([
    ['the job number', () => ({ number: running.number })],
    ['the serial', () => ({ serial: 'HW2-88001-A' })],
  ])('goes to the address on file, asked for by %s', async (_name, given) => {
    expect(await ask({ ...given(), email: ON_FILE.toUpperCase() })).toEqual([]);
    const [mail, ...more] = await linksSent();
    expect(more).toEqual([]);
    expect(mail).toMatchObject({ toAddress: ON_FILE, jobId: running.jobId, data: {} });
    const [, token = ''] = (mail && /\/job\/([A-Za-z0-9_-]{43})\b/.exec((await drawMail(mail)).text)) ?? [];
    expect(await findJobByToken(token)).toMatchObject({ jobId: running.jobId });
  });

  it('goes to nobody else', async () => {
    await ask({ number: running.number, email: NEW_OWNER.email });
    await ask({ number: claimJob.number, email: ON_FILE });
    expect(await linksSent()).toEqual([]);
  });

  it('is not sent beside the certificate that leads to the same job', async () => {
    await ask({ number: first.number, serial: SERIAL, email: ON_FILE });
    expect(await linksSent()).toEqual([]);
  });

  it('is sent once the job has ended too, after those that run, and says nothing of a price', async () => {
    const others: string[] = [];
    for (let each = 0; each < 3; each += 1)
      others.push((await makeBooking({ ...world, now: SENT, serial: 'HW2-88001-A' })).jobId);
    await moveTo(running.jobId, 'cancel', NOW);
    await ask({ serial: 'HW2-88001-A', email: ON_FILE });
    expect((await linksSent()).map(({ jobId }) => jobId).toSorted()).toEqual(others.toSorted());
    await db.mail.deleteMany({ where: { template: 'link-copy' } });
    await ask({ number: running.number, email: ON_FILE });
    const [mail] = await linksSent();
    expect(mail?.jobId).toBe(running.jobId);
    expect(mail && (await drawMail(mail)).text).not.toContain('as agreed');
  });

  it('is not sent once the data of its customer was removed', async () => {
    await db.customer.updateMany({
      where: { jobs: { some: { id: running.jobId } } },
      data: { erasedAt: NOW },
    });
    await ask({ number: running.number, email: ON_FILE });
    expect(await linksSent()).toEqual([]);
  });
});
