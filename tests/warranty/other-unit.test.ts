import { expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { settleSerial } from '@/lib/jobs/settle-serial';
import { writePhotos } from '@/lib/jobs/write-photos';
import { readChain } from '@/lib/warranty/records';
import { useDatabase } from '@/tests/database';
import {
  jobNow,
  makeCertificate,
  makeClaim,
  moveTo,
  ruleClaim,
  sendBack,
  somePhoto,
  takeIn,
} from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');
const COVERED = 'TW2-0051-18';
// One edit away, and printed on another unit of the same series.
const CLOSE = 'TW2-0051-19';

test('cover stays with the unit of the certificate, whatever serial opened the claim', async () => {
  const world = await makeWorkshop(SENT);
  const { number } = await makeCertificate(world, SENT, COVERED);
  const claim = await makeClaim({ number, now: NOW, serial: CLOSE, photos: [somePhoto()] });
  const { comparison } = await takeIn(claim.jobId, NOW, CLOSE);
  expect([comparison, (await jobNow(claim.jobId)).isSerialSettled]).toEqual(['likely-misread', false]);
  await expect(moveTo(claim.jobId, 'assess', NOW)).rejects.toMatchObject({ code: 'invalid' });

  // Seen closely it is a third one.
  const photos = [somePhoto()];
  await transaction((tx) =>
    writePhotos(tx, { jobId: claim.jobId, purpose: 'arrival', photos, actor: BENCH, now: NOW }),
  );
  const settled = { serial: 'TW7-4410-92', note: 'Read under the lamp', actor: BENCH, now: NOW };
  const settle = async () =>
    settleSerial({ jobId: claim.jobId, version: (await jobNow(claim.jobId)).version, ...settled });
  // A photo of the box is none of the serial.
  await expect(settle()).rejects.toMatchObject({ code: 'invalid', field: 'serial' });
  const ofSerial = { jobId: claim.jobId, purpose: 'serial', photos: [somePhoto()] } as const;
  await transaction((tx) => writePhotos(tx, { ...ofSerial, actor: BENCH, now: NOW }));
  await settle();
  await moveTo(claim.jobId, 'assess', NOW);
  const rule = (cause: 'workmanship' | 'separate-fault') => ruleClaim(claim, { cause, now: NOW });
  await expect(rule('workmanship')).rejects.toMatchObject({ code: 'invalid', field: 'cause' });
  await rule('separate-fault');
  await moveTo(claim.jobId, 'return-unrepaired', NOW);
  expect(await sendBack(claim.jobId, NOW)).toEqual({ certificate: null });
  const chain = await readChain(number);
  expect(chain?.inForce).toMatchObject({ revision: 1, serialTyped: COVERED });
  expect(await db.heldInterval.count()).toBe(0);
}, 60_000);

test('a claim that was opened with a slip of the eye goes on under the serial that arrived', async () => {
  const [certificate] = await db.certificate.findMany();
  const claim = await makeClaim({
    number: certificate?.number ?? '',
    now: NOW,
    serial: CLOSE,
    photos: [somePhoto()],
  });
  expect((await takeIn(claim.jobId, NOW, COVERED)).comparison).toBe('same');
  expect(await jobNow(claim.jobId)).toMatchObject({ isSerialSettled: true, serialTyped: COVERED });
});

test('another unit under the certificate’s own serial is settled before anything is ruled', async () => {
  await db.claim.updateMany({ data: { state: 'closed' } });
  const [certificate] = await db.certificate.findMany();
  const claim = await makeClaim({ number: certificate?.number ?? '', now: NOW, serial: COVERED });
  const { jobId } = claim;
  await takeIn(jobId, NOW, 'TW7-4410-92');
  const rule = (cause: 'workmanship' | 'no-fault-found') => ruleClaim(claim, { cause, now: NOW });
  await expect(rule('workmanship')).rejects.toThrow('not settled which unit');
  await expect(rule('no-fault-found')).rejects.toThrow('not settled which unit');

  // Once a covering ruling stands, no other unit is put in its place.
  const photos = [somePhoto()];
  await transaction((tx) => writePhotos(tx, { jobId, purpose: 'serial', photos, actor: BENCH, now: NOW }));
  const settle = async (serial: string) =>
    settleSerial({ jobId, version: (await jobNow(jobId)).version, serial, note: '', actor: BENCH, now: NOW });
  await settle(COVERED);
  await rule('workmanship');
  await expect(settle('TW7-4410-92')).rejects.toMatchObject({ code: 'invalid', field: 'serial' });
});
