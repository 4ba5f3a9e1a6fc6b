import { beforeAll, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { hasFile, putFile } from '@/lib/files/store';
import { addPhotos } from '@/lib/jobs/add-photo';
import { arrive } from '@/lib/jobs/arrive';
import { expectedParcels, findArrival } from '@/lib/jobs/find-arrival';
import { moveJob } from '@/lib/jobs/move';
import { recordFinding } from '@/lib/jobs/record-finding';
import { eventLine } from '@/lib/jobs/rules/events';
import { settleSerial } from '@/lib/jobs/settle-serial';
import { takeBackEntry } from '@/lib/jobs/take-back-entry';
import { undoArrival } from '@/lib/jobs/undo-arrival';
import { walkIn } from '@/lib/jobs/walk-in';
import { drawMail } from '@/lib/mail/draw';
import { openClaimAtDesk } from '@/lib/warranty/open-claim-at-desk';
import { useDatabase } from '@/tests/database';
import { ADDRESS, makeBooking } from '@/tests/makers/job';
import { jobNow, makeCertificate, makeClaim, somePhoto, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const BOOKED = new Date('2026-11-11T09:00:00Z');
const NOW = new Date('2026-11-25T09:00:00Z');
const LATER = new Date('2026-11-26T09:00:00Z');
const REASON = 'Two parcels of the same model came on one day.';

let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeAll(async () => {
  world = await makeWorkshop(BOOKED);
}, 60_000);

async function booked(serial: string) {
  return makeBooking({ repairId: world.repairId, now: BOOKED, serial });
}

async function undo(jobId: string, now = LATER) {
  const { version } = await jobNow(jobId);
  await undoArrival({ jobId, version, reason: REASON, actor: BENCH, now });
}

async function storedPhoto() {
  const photo = somePhoto();
  await putFile(photo.fileKey, Buffer.from('large'), 'image/jpeg');
  await putFile(photo.thumbKey, Buffer.from('small'), 'image/jpeg');
  return photo;
}

describe('a parcel that was taken in under the wrong booking', () => {
  it('leaves the booking as it was, and its customer is told', async () => {
    const { jobId, number } = await booked('HW2-81001-A');
    const before = await jobNow(jobId);
    const photo = await storedPhoto();
    await arrive({
      jobId,
      version: before.version,
      serial: 'HW2-99999-Z',
      arrived: before.accessories.map(({ name }) => name),
      extra: ['Somebody’s strap'],
      photos: [],
      serialPhotos: [photo],
      actor: BENCH,
      now: NOW,
    });
    await settleSerial({
      jobId,
      version: (await jobNow(jobId)).version,
      serial: 'HW2-99999-Z',
      note: 'Read twice',
      actor: BENCH,
      now: NOW,
    });
    await undo(jobId);
    const after = await jobNow(jobId);
    expect(after).toMatchObject({
      stage: 'booked',
      arrivedAt: null,
      arrivedSerial: null,
      serialComparison: null,
      isSerialSettled: false,
      promisedOn: null,
      serialTyped: before.serialTyped,
      serialKey: before.serialKey,
      photos: [],
    });
    expect(after.accessories).toEqual(before.accessories);
    expect(await hasFile(photo.fileKey)).toBe(false);
    const last = after.events.at(-1);
    expect(last).toMatchObject({ kind: 'arrival-undone', data: { reason: REASON, sha256: [photo.sha256] } });
    expect(eventLine(last?.kind ?? '', last?.data)).toBe(`Not here after all: ${REASON}`);
    const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'arrival-undone' } });
    const { text } = await drawMail(mail);
    expect(text).toContain(REASON);
    expect(text).toContain('The photos of it are off your job page.');
    // It is expected again, from that day on, and may be cancelled or taken in as ever.
    const expected = await expectedParcels(LATER);
    expect(expected.find((parcel) => parcel.number === number)?.wait).toMatchObject({
      since: '2026-11-26',
      isReminderDue: false,
    });
    expect(await findArrival('HW2-81001-A', expected)).toMatchObject({ state: 'found', job: { number } });
    await takeIn(jobId, LATER);
    expect(await jobNow(jobId)).toMatchObject({ stage: 'arrived', isSerialSettled: true });
  });

  it('leaves nothing settled of the unit that comes later: its photos can be taken back', async () => {
    const { jobId } = await booked('HW2-81006-A');
    const common = { jobId, actor: BENCH };
    const settle = async (serial: string, now: Date) =>
      settleSerial({ ...common, version: (await jobNow(jobId)).version, serial, note: '', now });
    const come = async (serial: string, now: Date) =>
      arrive({
        ...common,
        version: (await jobNow(jobId)).version,
        serial,
        arrived: [],
        extra: [],
        photos: [],
        serialPhotos: [await storedPhoto()],
        now,
      });
    const takeBack = async (now: Date) => {
      const { version, photos } = await jobNow(jobId);
      return takeBackEntry({
        ...common,
        version,
        what: 'photo',
        id: photos[0]?.id ?? '',
        reason: REASON,
        now,
      });
    };
    await come('HW2-99998-Z', NOW);
    await settle('HW2-99998-Z', NOW);
    await expect(takeBack(NOW)).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringContaining('another photo of the serial'),
    });
    // One of the box is none of the serial, as when it was settled; another of the serial is.
    await addPhotos({ ...common, purpose: 'arrival', photos: [await storedPhoto()], now: NOW });
    await expect(takeBack(NOW)).rejects.toMatchObject({ code: 'conflict' });
    await addPhotos({ ...common, purpose: 'serial', photos: [await storedPhoto()], now: NOW });
    await takeBack(NOW);
    await undo(jobId);
    await come('HW2-81006-A', LATER);
    await takeBack(LATER);
    expect((await jobNow(jobId)).photos).toEqual([]);
  });

  it('can be cancelled by its customer once it is not here', async () => {
    const { jobId } = await booked('HW2-81002-A');
    await takeIn(jobId, NOW);
    await undo(jobId);
    await moveJob({ jobId, move: 'cancel', note: '', actor: { kind: 'customer' }, now: LATER });
    expect((await jobNow(jobId)).stage).toBe('cancelled');
  });

  it('keeps what the customer sent on a claim, which is not here again', async () => {
    const serial = 'HW2-81003-A';
    const { number } = await makeCertificate(world, BOOKED, serial);
    const { jobId } = await makeClaim({ number, serial, now: NOW, photos: [somePhoto()] });
    await takeIn(jobId, NOW);
    await undo(jobId);
    const { photos, claim, stage } = await jobNow(jobId);
    expect([stage, claim?.state, photos.length]).toEqual(['booked', 'open', 1]);
  });

  it('is not undone once something is recorded of the unit, nor on a page that is old', async () => {
    const { jobId } = await booked('HW2-81004-A');
    await takeIn(jobId, NOW);
    const { version } = await jobNow(jobId);
    const old = { jobId, version: version - 1, reason: REASON, actor: BENCH, now: NOW };
    await expect(undoArrival(old)).rejects.toMatchObject({ code: 'conflict' });
    await recordFinding({ jobId, text: 'The socket is torn.', photos: [], actor: BENCH, now: NOW });
    await expect(undo(jobId)).rejects.toThrow('take that back first');
    expect((await jobNow(jobId)).stage).toBe('arrived');
  });

  it.each([
    ['HW2-81006-A', 'is not undone on a claim', 'told with the unit on the table', true],
    ['HW2-81007-A', 'is undone on a claim', 'told by telephone, whose parcel came later', false],
  ])('%s: %s %s', async (serial, _, _how, isHere) => {
    const { number } = await makeCertificate(world, BOOKED, serial);
    const { jobNumber } = await openClaimAtDesk({
      certificateNumber: number,
      serial,
      symptom: 'Does not charge',
      details: '',
      batteryAnswer: 'healthy',
      dataAnswer: 'saved',
      address: ADDRESS,
      photos: [],
      isHere,
      extra: [],
      reason: '',
      actor: BENCH,
      now: NOW,
    });
    const { id: jobId } = await db.job.findUniqueOrThrow({ where: { number: jobNumber } });
    if (isHere) await expect(undo(jobId)).rejects.toThrow('no booking that waits');
    else {
      await takeIn(jobId, LATER);
      await undo(jobId);
    }
    expect((await jobNow(jobId)).stage).toBe(isHere ? 'arrived' : 'booked');
  });

  it('is not undone on a job that was opened for the parcel itself', async () => {
    const { number } = await walkIn({
      customer: {
        name: 'Perran Veale',
        email: 'perran.veale@example.org',
        phone: '',
        address1: '3 Wherry Steps',
        address2: '',
        postcode: 'QM1 2AB',
        town: 'Sandmouth',
        country: 'GB',
      },
      repairId: world.repairId,
      serial: 'HW2-81005-A',
      problem: 'Does not charge',
      extra: [],
      batteryAnswer: 'healthy',
      isOtherMatter: false,
      photos: [],
      formKey: '0192f7a0-0000-7000-8000-000000000001',
      actor: BENCH,
      now: NOW,
    });
    const { id } = await db.job.findUniqueOrThrow({ where: { number } });
    await expect(undo(id)).rejects.toThrow('no booking that waits');
  });
});
