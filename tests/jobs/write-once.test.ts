import { expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { addPhotos } from '@/lib/jobs/add-photo';
import { recordPayment } from '@/lib/jobs/record-payment';
import { renewLink } from '@/lib/jobs/renew-link';
import { sendMessage } from '@/lib/jobs/send-message';
import { idOfSent } from '@/lib/jobs/write-once';
import { useDatabase } from '@/tests/database';
import { versionOf } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { somePhoto } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');
const KEY = '019aa000-0000-7000-8123-4567890abcde';
const NEXT = '019aa000-0001-7000-8000-000000000000';

useDatabase();

it('gives one id to the same thing sent from one form, and another to anything else', () => {
  const { id } = idOfSent(KEY, ['job', 7200]);
  expect(id).toMatch(/^019aa000-0000-7000-8123-45[0-9a-f]{10}$/);
  expect(idOfSent(KEY, ['job', 7200])).toEqual({ id });
  expect(idOfSent(KEY, ['job', 7000])).not.toEqual({ id });
  expect(idOfSent(KEY, new Map([['pin-1', 'through']]))).not.toEqual(
    idOfSent(KEY, new Map([['pin-1', 'no path']])),
  );
  expect(idOfSent(NEXT, ['job', 7200])).not.toEqual({ id });
  expect(idOfSent(undefined, ['job', 7200])).toEqual({});
});

it('gives ids that stand in the order of their forms', () => {
  const ids = Array.from({ length: 50 }, (_, sent) => idOfSent(KEY, sent).id);
  expect(ids.every((id) => id < idOfSent(NEXT, 0).id)).toBe(true);
});

it('keeps a second message, payment and photo from the form of the first, none of them twice, and one new link', async () => {
  const { repairId } = await makeWorkshop(now);
  const { jobId } = await makeBooking({ repairId, now });
  const say = (text: string) => sendMessage({ jobId, text, formKey: KEY, actor: { kind: 'customer' }, now });
  for (const text of ['Is it there yet?', 'Is it there yet?', 'And the lead too?']) await say(text);
  expect(await db.message.count({ where: { jobId } })).toBe(2);

  const pay = (amount: number) =>
    recordPayment({
      jobId,
      amount,
      method: 'cash',
      reference: '',
      receivedOn: day('2026-11-25'),
      formKey: KEY,
      actor: OWNER,
      now,
    });
  for (const amount of [2000, 2000, 5200]) await pay(amount);
  const kept = await db.payment.findMany({ where: { jobId }, select: { amountMinor: true } });
  expect(kept.map(({ amountMinor }) => amountMinor).sort()).toEqual([2000, 5200]);

  // What is sent again is stored under a key of its own, and is the same file by its SHA-256.
  const photoOf = (sha256: string) => ({ ...somePhoto(), sha256 });
  const add = (...files: string[]) =>
    addPhotos({ jobId, purpose: 'arrival', photos: files.map(photoOf), formKey: KEY, actor: BENCH, now });
  for (const files of [['lid'], ['lid'], ['lid', 'foot']]) await add(...files);
  expect(await db.photo.count({ where: { jobId } })).toBe(3);
  expect(await db.jobEvent.count({ where: { jobId, kind: 'photo-added' } })).toBe(3);

  const version = await versionOf(jobId);
  const renewed = { jobId, version, actor: BENCH, now };
  await renewLink(renewed);
  await expect(renewLink(renewed)).rejects.toMatchObject({ code: 'conflict' });
  expect(await db.privateLink.count({ where: { jobId, revokedAt: null } })).toBe(1);
}, 60_000);
