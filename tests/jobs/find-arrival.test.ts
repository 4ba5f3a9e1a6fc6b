import { beforeAll, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { expectedParcels, findArrival } from '@/lib/jobs/find-arrival';
import { historyOfSerial } from '@/lib/jobs/find-arrival-history';
import { moveJob } from '@/lib/jobs/move';
import { nameParcel } from '@/lib/jobs/name-parcel';
import { foldSerial } from '@/lib/numbers/serial';
import { useDatabase } from '@/tests/database';
import { makeBooking, SERIAL } from '@/tests/makers/job';
import { jobNow, makeCertificate, makeClaim, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-11-20T10:00:00Z');
const BOOKED = new Date('2026-11-25T09:00:00Z');
const NOW = new Date('2026-11-26T09:00:00Z');

type Made = { number: string; jobId: string };
let first: Made;
let second: Made;
let claim: Made & { claim: string };
let certificate: { number: string; jobId: string };

beforeAll(async () => {
  const world = await makeWorkshop(SENT);
  certificate = await makeCertificate(world, SENT, 'HW2-77001-A');
  first = await makeBooking({ repairId: world.repairId, now: BOOKED });
  second = await makeBooking({ repairId: world.repairId, now: NOW, serial: 'HW2-20991-C' });
  const opened = await makeClaim({ number: certificate.number, serial: 'HW2-77001-A', now: NOW });
  claim = { claim: opened.number, jobId: opened.jobId, number: (await jobNow(opened.jobId)).number };
  await nameParcel({ jobId: second.jobId, reference: 'RR473124829GB', now: NOW });
}, 60_000);

async function find(typed: string) {
  return findArrival(typed, await expectedParcels(NOW));
}

describe('expected parcels', () => {
  it('are the bookings not yet here, those known to be posted first, then the oldest', async () => {
    const numbers = (await expectedParcels(NOW)).map((parcel) => parcel.number);
    expect(numbers).toEqual([second.number, first.number, claim.number]);
  });
});

describe('the number of a parcel', () => {
  it('is taken off again by an empty one, once, and found no more', async () => {
    const { jobId } = first;
    const name = (reference: string) => nameParcel({ jobId, reference, now: NOW });
    await name('HP-IN-9041');
    for (let time = 0; time < 2; time += 1) await name('');
    const job = await jobNow(jobId);
    expect(job.inboundReference).toBe('');
    expect(job.events.slice(-2).map(({ kind }) => kind)).toEqual(['parcel-named', 'parcel-unnamed']);
    expect(await find('HP-IN-9041')).toMatchObject({ state: 'none' });
  });
});

describe('finding the booking of a parcel', () => {
  it.each([
    ['its job number', () => first.number, () => first.number],
    ['its serial, spelt otherwise', () => 'hw2 10480 k', () => first.number],
    ['the carrier’s reference', () => 'rr 4731 2482 9 gb', () => second.number],
    ['the number of its claim', () => claim.claim, () => claim.number],
    ['the certificate in the parcel, by the open claim on it', () => certificate.number, () => claim.number],
  ])('works by %s', async (_name, typed, number) => {
    expect(await find(typed())).toMatchObject({ state: 'found', job: { number: number() } });
  });

  it('says that one character looks wrong instead of not found', async () => {
    const wrong = first.number.slice(0, -1) + (first.number.endsWith('7') ? '8' : '7');
    expect(await find(wrong)).toEqual({ state: 'wrong-character', what: 'check' });
    expect(await find('RR473124828GB')).toEqual({ state: 'wrong-character', what: 'reference' });
  });

  it('lists a serial that may be misread for a person to choose', async () => {
    expect(await find('HW2-1O480-K')).toMatchObject({
      state: 'choose',
      by: 'near-serial',
      jobs: [{ number: first.number }],
    });
  });

  it('knows nothing of a serial nobody booked', async () => {
    expect(await find('HD1-9')).toEqual({ state: 'none', isNumber: false });
  });
});

describe('after the arrival', () => {
  it('says that the unit is here, and what else is known of its serial', async () => {
    await takeIn(first.jobId, NOW);
    const here = { state: 'here-already', jobs: [{ stage: 'arrived' }], certificates: [] };
    expect(await find(first.number)).toMatchObject(here);
    expect(await find(SERIAL)).toMatchObject({ state: 'here-already', jobs: [{ number: first.number }] });

    const history = await historyOfSerial({
      serialKeys: [foldSerial('HW2-77001-A')],
      exceptJobId: claim.jobId,
      timeZone: 'Europe/London',
    });
    expect(history.jobs.map((job) => job.stage)).toEqual(['sent-back']);
    expect(history.certificates).toEqual([{ number: certificate.number, revision: 1 }]);
  });

  it('leads from a certificate without an open claim to the job that issued it', async () => {
    const { version } = await jobNow(claim.jobId);
    await moveJob({ jobId: claim.jobId, version, move: 'cancel', note: '', actor: BENCH, now: NOW });
    expect(await find(certificate.number)).toEqual({
      state: 'certificate-only',
      certificates: [{ number: certificate.number, jobNumber: (await jobNow(certificate.jobId)).number }],
    });
  });

  it('offers the certificate by the serial too, beside the parcel that may have come back undelivered', async () => {
    const { number } = await jobNow(certificate.jobId);
    const certificates = [{ number: certificate.number, jobNumber: number }];
    const sent = { jobs: [{ number }], certificates };
    expect(await find('hw2 77001 a')).toMatchObject({ state: 'went-back', ...sent });
    expect(await find(number)).toMatchObject({ state: 'went-back', ...sent });
    await db.job.update({ where: { id: certificate.jobId }, data: { carrier: '' } });
    expect(await find('hw2 77001 a')).toEqual({ state: 'certificate-only', certificates });
    expect(await find(number)).toMatchObject({ state: 'here-already', ...sent });
  });

  it('opens a new claim after the first one was cancelled before it was posted', async () => {
    const again = await makeClaim({ number: certificate.number, serial: 'HW2-77001-A', now: NOW });
    expect(again.number).not.toBe(claim.claim);
  });
});
