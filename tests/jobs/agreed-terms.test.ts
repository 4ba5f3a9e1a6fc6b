import { beforeEach, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { drawMail } from '@/lib/mail/draw';
import { readKeptTerms } from '@/lib/workshop/kept-terms';
import { readWorkshop } from '@/lib/workshop/records';
import { saveSettings } from '@/lib/workshop/save-settings';
import { termsId } from '@/lib/workshop/terms-id';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { jobNow } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const NOW = new Date('2026-11-25T09:00:00Z');
const FIRST = '# Payment\nYou pay when it is done.\n\n- card\n- transfer';
const SECOND = 'You pay before we begin.';

useDatabase();

let repairId = '';
const begin = madeOnce(async () => {
  const world = await makeWorkshop(NOW);
  await saveTerms(FIRST);
  return world;
});
beforeEach(async () => {
  ({ repairId } = await begin());
}, 60_000);

async function saveTerms(termsText: string): Promise<void> {
  const { updatedAt, privacyText, paymentText, packingText } = await readWorkshop();
  await saveSettings({ termsText, privacyText, paymentText, packingText }, updatedAt);
}

const textOf = async (jobId: string) => {
  const { termsId: id } = await jobNow(jobId);
  return id === null ? null : (await readKeptTerms(id))?.text;
};

it('a job keeps the terms it was booked under after the owner has written others', async () => {
  const { jobId } = await makeBooking({ repairId, now: NOW });
  await saveTerms(SECOND);
  const later = await makeBooking({ repairId, now: NOW, serial: 'HW2-10481-K' });
  expect([await textOf(jobId), await textOf(later.jobId)]).toEqual([FIRST, SECOND]);
  await saveTerms(FIRST);
  await makeBooking({ repairId, now: NOW, serial: 'HW2-10482-K' });
  expect(await db.termsText.count()).toBe(2);
});

it('the mail of the booking holds them word for word', async () => {
  await makeBooking({ repairId, now: NOW });
  await saveTerms(SECOND);
  const { text } = await drawMail(await db.mail.findFirstOrThrow({ where: { template: 'job-booked' } }));
  expect(text).toContain('Terms of Quay & Alder, as you agreed to them');
  expect(text).toContain('Payment\n\nYou pay when it is done.\n\n• card\n\n• transfer');
});

it('a job of a workshop without terms has none', async () => {
  await saveTerms('');
  const { jobId } = await makeBooking({ repairId, now: NOW });
  expect(await textOf(jobId)).toBeNull();
  expect(await db.termsText.count()).toBe(0);
});

it('kept terms cannot be changed or removed by anybody, and are found by their key alone', async () => {
  await makeBooking({ repairId, now: NOW });
  await expect(db.termsText.updateMany({ data: { text: SECOND } })).rejects.toThrow();
  await expect(db.termsText.deleteMany()).rejects.toThrow();
  expect(await readKeptTerms(termsId(SECOND))).toBeNull();
  expect(await readKeptTerms('none')).toBeNull();
});
