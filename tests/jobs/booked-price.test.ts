import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { book } from '@/lib/jobs/book';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { termsId } from '@/lib/workshop/terms-id';
import { resetDatabase, useDatabase } from '@/tests/database';
import { filledDraft } from '@/tests/makers/job';
import { makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const NOW = new Date('2026-11-25T09:00:00Z');
let repairId = '';
let draftToken = '';

beforeAll(async () => {
  await resetDatabase();
  repairId = (await makeWorkshop(NOW)).repairId;
}, 60_000);
beforeEach(async () => {
  await db.repair.update({ where: { id: repairId }, data: { isListed: true, priceMinor: 7200 } });
  draftToken = await filledDraft({ repairId, now: NOW });
});

const press = (shownMinor: number) => book({ draftToken, shownMinor, now: NOW });

async function termsNow() {
  const { returnFeeMinor, termsText } = await db.workshop.findFirstOrThrow();
  const shown = await readBookingRepair(repairId);
  return { returnFeeMinor, policyVersionId: shown?.terms.id ?? '', termsId: termsId(termsText) };
}

async function writeNewTerms(): Promise<void> {
  const { id: _, version, createdAt: __, ...terms } = await db.policyVersion.findFirstOrThrow();
  await db.policyVersion.create({ data: { ...terms, version: version + 1, createdAt: NOW } });
}

async function expectNothingKept(): Promise<void> {
  expect([await db.job.count(), await db.customer.count(), await db.mail.count()]).toEqual([0, 0, 0]);
  expect(await db.bookingDraft.count({ where: { jobId: null } })).toBeGreaterThan(0);
}

describe('the price a booking is made at', () => {
  it.each([
    ['the price', () => db.repair.update({ where: { id: repairId }, data: { priceMinor: 7500 } }), '£75.00'],
    [
      'how prices are kept',
      () => db.workshop.update({ where: { id: 1 }, data: { pricesIncludeTax: false } }),
      '£86.40',
    ],
  ])('is the one that was shown: where %s has changed since, nothing is booked', async (_, change, shown) => {
    try {
      await change();
      await expect(press(7200)).rejects.toMatchObject({
        code: 'conflict',
        message: expect.stringContaining(`The price is now ${shown}, and not the £72.00 that you saw`),
      });
      await expectNothingKept();
    } finally {
      await db.workshop.update({ where: { id: 1 }, data: { pricesIncludeTax: true } });
    }
  });

  it.each([
    ['repair', () => db.repair.update({ where: { id: repairId }, data: { isListed: false } })],
    ['model', () => db.model.updateMany({ data: { isListed: false } })],
  ])('is none where the %s is not on the price list any more', async (_, change) => {
    try {
      await change();
      await expect(press(7200)).rejects.toMatchObject({
        code: 'conflict',
        message: expect.stringContaining('not on the price list any more'),
      });
      await expectNothingKept();
    } finally {
      await db.model.updateMany({ data: { isListed: true } });
    }
  });

  it.each([
    [
      'the return fee',
      () => db.workshop.update({ where: { id: 1 }, data: { returnFeeMinor: 1200 } }),
      'The return fee is now £12.00, and not the £9.60 that you saw. Nothing is booked yet.',
    ],
    ['the cover', writeNewTerms, 'What our promise covers has changed since you saw it.'],
    [
      'the text of the terms',
      () => db.workshop.update({ where: { id: 1 }, data: { termsText: 'Other terms' } }),
      'Our terms have changed since you saw them.',
    ],
  ])(
    'comes with the terms that were shown: where %s has changed since, nothing is booked',
    async (_, change, said) => {
      const shownTerms = await termsNow();
      try {
        await change();
        const sent = { draftToken, shownMinor: 7200, now: NOW };
        await expect(book({ ...sent, shownTerms })).rejects.toMatchObject({
          code: 'conflict',
          message: expect.stringContaining(said),
        });
        await expectNothingKept();
      } finally {
        await db.workshop.update({ where: { id: 1 }, data: { returnFeeMinor: 960, termsText: 'Terms' } });
      }
    },
  );

  it('is the new one once that was read, and the answers are still there', async () => {
    await db.repair.update({ where: { id: repairId }, data: { priceMinor: 7500 } });
    await expect(press(7200)).rejects.toMatchObject({ code: 'conflict' });
    const { number } = await press((await readBookingRepair(repairId))?.grossMinor ?? 0);
    const revision = await db.quoteRevision.findFirstOrThrow({ where: { quote: { job: { number } } } });
    expect(revision).toMatchObject({ grossMinor: 7500, agreedText: expect.stringContaining('£75.00') });
    // Pressed again with the older price, it is the job that was made.
    expect(await press(7200)).toMatchObject({ number, isNew: false });
  });
});
