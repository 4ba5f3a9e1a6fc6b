import { beforeEach, describe, expect, it } from 'vitest';
import { savePolicyVersion } from '@/lib/catalogue/save-policy-version';
import { db } from '@/lib/db/client';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { agreedRevision, openRevision } from '@/lib/quotes/records';
import { repairFormData } from '@/lib/quotes/repair-form-data';
import { FEE_TAKEN_OFF } from '@/lib/quotes/rules/inspection-fee';
import { readConditions } from '@/lib/quotes/stored-conditions';
import { readTerms } from '@/lib/warranty/stored-terms';
import { useDatabase } from '@/tests/database';
import { takeIn } from '@/tests/makers/course';
import { askPrice, PAD, writePrice } from '@/tests/makers/offer';
import { bookAtQuote, makeQuote, makeRequest, quoteNow } from '@/tests/makers/quote';
import { shownNow } from '@/tests/makers/shown';
import { jobNow } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const NOW = new Date('2026-12-01T10:00:00Z');
const INSPECTION = { ...PAD, kind: 'inspection-fee', description: 'Inspection', amount: 1800 } as const;
const SENT = {
  returnFeeMinor: 960,
  inspectionFeeMinor: 1800,
  isInspectionFeeTakenOff: true,
  replacementText: 'A loan recorder for £4.00 a day.',
};
const CHANGED = {
  returnFeeMinor: 1500,
  inspectionFeeMinor: 2400,
  isInspectionFeeTakenOff: false,
  replacementText: '',
};

useDatabase();

let repairId = '';
let quoteId = '';
const begin = madeOnce(async () => {
  const world = await makeWorkshop(NOW);
  await db.workshop.update({ where: { id: 1 }, data: SENT });
  return { repairId: world.repairId, quoteId: (await makeRequest({ now: NOW })).quoteId };
});
beforeEach(async () => {
  ({ repairId, quoteId } = await begin());
}, 60_000);

/** The owner changes every setting, and the policy to three months. */
async function changeEverything(): Promise<void> {
  await db.workshop.update({ where: { id: 1 }, data: CHANGED });
  const { policyId, policy } = await db.repair.findUniqueOrThrow({
    where: { id: repairId },
    select: { policyId: true, policy: { select: { name: true, versions: true } } },
  });
  const terms = { ...readTerms(policy.versions[0] ?? {}), workTerm: 'P3M', partsTerm: 'P3M' };
  const shown = await shownNow('policy', policyId);
  await savePolicyVersion({ shown, name: policy.name, terms, now: NOW });
}

/** The owner gives the repair another policy, of a month. */
async function giveOtherPolicy(): Promise<void> {
  const { id: _, policyId: __, ...terms } = await db.policyVersion.findFirstOrThrow();
  const policy = await db.policy.create({
    data: {
      name: 'Short',
      versions: { create: { ...terms, version: 1, workTerm: 'P1M', partsTerm: 'P1M' } },
    },
  });
  await db.repair.update({ where: { id: repairId }, data: { policyId: policy.id } });
}

describe('a price that was sent', () => {
  it.each([
    ['every setting and the policy were changed', changeEverything],
    ['the repair was given another policy', giveOtherPolicy],
  ])('is shown, agreed to and booked as it was sent, though %s since', async (_, change) => {
    await makeQuote({ quoteId, repairId, now: NOW });
    const form = await repairFormData(await quoteNow(quoteId));
    await change();
    const sent = openRevision(await quoteNow(quoteId));
    expect(sent).toMatchObject({ ...SENT, policyVersion: { workTerm: 'P12M' } });
    const { jobId } = await bookAtQuote({ quoteId, now: NOW });
    expect(await jobNow(jobId)).toMatchObject({
      returnFeeMinor: 960,
      policyVersion: { workTerm: 'P12M', version: 1 },
    });
    const quote = await quoteNow(quoteId);
    expect(agreedRevision(quote)?.policyVersion?.workTerm).toBe('P12M');
    expect((await repairFormData(quote))?.fields).toEqual(form?.fields);
    expect(await readBookingRepair(repairId, quoteId)).toMatchObject({
      returnFeeMinor: 960,
      terms: { workTerm: 'P12M' },
    });
  });

  it('cannot be given other conditions by anybody', async () => {
    await makeQuote({ quoteId, repairId, now: NOW });
    for (const data of [
      { returnFeeMinor: 1500 },
      { isInspectionFeeTakenOff: false },
      { replacementText: '' },
    ])
      await expect(db.quoteRevision.updateMany({ where: { quoteId }, data })).rejects.toThrow();
  });

  it('keeps its conditions in a new revision while it is held, unless the customer asked for the change', async () => {
    await makeQuote({ quoteId, repairId, now: NOW });
    await changeEverything();
    await makeQuote({ quoteId, repairId, now: NOW, amount: 9000 });
    expect(openRevision(await quoteNow(quoteId))).toMatchObject({
      ...SENT,
      policyVersion: { workTerm: 'P12M' },
    });
    await makeQuote({ quoteId, repairId, now: NOW, amount: 9900, customerAsked: true });
    const asked = openRevision(await quoteNow(quoteId));
    expect(asked).toMatchObject({ ...CHANGED, policyVersion: { workTerm: 'P3M' } });
    expect(asked && readConditions(asked)).toMatchObject(CHANGED);
  });
});

describe('an inspection that was agreed to', () => {
  const offTaken = async (jobId: string) =>
    (await jobNow(jobId)).quotes[0]?.revisions
      .at(-1)
      ?.lines.filter(({ description }) => description === FEE_TAKEN_OFF)
      .map(({ amountMinor }) => amountMinor);

  it('is taken off the price of the repair as was said, whatever the setting says since', async () => {
    await makeQuote({ quoteId, repairId, now: NOW, lines: [INSPECTION] });
    const { jobId } = await bookAtQuote({ quoteId, now: NOW });
    await takeIn(jobId, NOW);
    await changeEverything();
    await askPrice(jobId, NOW);
    expect(await offTaken(jobId)).toEqual([-1800]);
    // What comes after a yes to this one keeps to it too.
    expect((await jobNow(jobId)).quotes[0]?.revisions.at(-1)?.isInspectionFeeTakenOff).toBe(true);
  });

  it('is taken off where the workshop does so by now, though it was not said', async () => {
    await db.workshop.update({ where: { id: 1 }, data: { isInspectionFeeTakenOff: false } });
    await makeQuote({ quoteId, repairId, now: NOW, lines: [INSPECTION] });
    const { jobId } = await bookAtQuote({ quoteId, now: NOW });
    await takeIn(jobId, NOW);
    await writePrice(jobId, NOW);
    expect(await offTaken(jobId)).toEqual([]);
    await db.workshop.update({ where: { id: 1 }, data: { isInspectionFeeTakenOff: true } });
    await writePrice(jobId, NOW);
    expect(await offTaken(jobId)).toEqual([-1800]);
  });
});
