import { beforeEach, describe, expect, test } from 'vitest';
import { priceHistory } from '@/lib/catalogue/price-history';
import { type RepairInput, saveRepair } from '@/lib/catalogue/save-repair';
import { lastTaxOfRepair } from '@/lib/catalogue/staff-records';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { DEMO_REPAIRS, loadCatalogue } from '@/prisma/demo/catalogue';
import { demoId } from '@/prisma/demo/demo-id';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { shownNow } from '@/tests/makers/shown';
import { makeWorkshop, OWNER } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');
const later = new Date('2026-11-25T15:00:00Z');

useDatabase();
beforeEach(resetDatabase);

async function inputOf(repairId: string): Promise<RepairInput & { priceKind: string }> {
  const { id: _, slug: __, ...repair } = await db.repair.findUniqueOrThrow({ where: { id: repairId } });
  return { ...repair, taxCategory: 'S', priceKind: 'GBP with tax' };
}

describe('the price of a repair', () => {
  test('begins when the repair is added, and says who set it', async () => {
    const { repairId } = await makeWorkshop(now);
    const input = { ...(await inputOf(repairId)), name: 'Belt clip replaced', priceMinor: 1200 };
    const id = await saveRepair(null, input, { now, userId: OWNER.id });
    expect(await priceHistory(id)).toMatchObject([
      { priceMinor: 1200, taxCategory: 'S', taxRateBps: 2000, since: now, who: 'Odile Quay' },
    ]);
  });

  test('gets a row for every change of price or tax, the newest first', async () => {
    const { repairId } = await makeWorkshop(now);
    const input = await inputOf(repairId);
    await saveRepair(
      await shownNow('repair', repairId),
      { ...input, priceMinor: 7500 },
      { now, userId: OWNER.id },
    );
    await saveRepair(
      await shownNow('repair', repairId),
      { ...input, priceMinor: 7500, taxRateBps: 550 },
      { now: later, userId: null },
    );
    await saveRepair(
      await shownNow('repair', repairId),
      { ...input, priceMinor: 7500, taxRateBps: 550 },
      { now: later, userId: null },
    );
    expect(await priceHistory(repairId)).toMatchObject([
      { priceMinor: 7500, taxRateBps: 550, since: later, who: null },
      { priceMinor: 7500, taxRateBps: 2000, since: now, who: 'Odile Quay' },
    ]);
  });

  test('is refused from a form that asked for it with tax, once prices are kept without', async () => {
    const { repairId } = await makeWorkshop(now);
    const input = { ...(await inputOf(repairId)), priceMinor: 4800 };
    const shown = await shownNow('repair', repairId);
    await saveRepair(shown, input, { now, userId: OWNER.id });
    await db.workshop.updateMany({ data: { pricesIncludeTax: false } });
    const late = async (priceKind: string) =>
      saveRepair(
        await shownNow('repair', repairId),
        { ...input, priceMinor: 5000, priceKind },
        { now: later, userId: OWNER.id },
      );
    await expect(late('GBP with tax')).rejects.toMatchObject({ code: 'conflict' });
    await expect(saveRepair(null, { ...input, name: 'Foot' }, { now, userId: null })).rejects.toMatchObject({
      code: 'conflict',
    });
    await late('GBP without tax');
    expect(await priceHistory(repairId)).toMatchObject([
      { priceMinor: 5000, isGross: false },
      { priceMinor: 4800, isGross: true },
    ]);
  });

  test('gives the next repair its tax; the first one gets none', async () => {
    expect(await lastTaxOfRepair()).toBeNull();
    const { repairId } = await makeWorkshop(now);
    const input = await inputOf(repairId);
    const by = { now, userId: OWNER.id };
    await saveRepair(null, { ...input, name: 'Foot replaced', taxRateBps: 550 }, by);
    expect(await lastTaxOfRepair()).toEqual({ category: 'S', rateBps: 550 });
    const exempt = { ...input, name: 'Knob replaced', taxCategory: 'E' as const, taxRateBps: 0 };
    await saveRepair(null, exempt, { ...by, now: later });
    expect(await lastTaxOfRepair()).toEqual({ category: 'E', rateBps: 0 });
  });

  test('gets none where only the words change', async () => {
    const { repairId } = await makeWorkshop(now);
    await saveRepair(
      await shownNow('repair', repairId),
      { ...(await inputOf(repairId)), minutes: 5 },
      { now, userId: OWNER.id },
    );
    expect(await priceHistory(repairId)).toEqual([]);
  });

  test('cannot be written over', async () => {
    const { repairId } = await makeWorkshop(now);
    const input = await inputOf(repairId);
    await saveRepair(
      await shownNow('repair', repairId),
      { ...input, priceMinor: 7500 },
      { now, userId: OWNER.id },
    );
    await expect(db.repairPrice.updateMany({ data: { priceMinor: 1 } })).rejects.toThrow();
    await expect(db.repairPrice.deleteMany({})).rejects.toThrow();
  });

  test('that changes leaves booked jobs as they are; the next booking has the new one', async () => {
    const { repairId } = await makeWorkshop(now);
    const before = await makeBooking({ repairId, now });
    const input = await inputOf(repairId);
    await saveRepair(
      await shownNow('repair', repairId),
      { ...input, priceMinor: 9900 },
      { now: later, userId: OWNER.id },
    );
    const after = await makeBooking({ repairId, now: later, serial: 'HW2-20991-B' });
    const grossOf = async (jobId: string) =>
      (await db.quoteRevision.findFirstOrThrow({ where: { quote: { jobId } } })).grossMinor;
    expect(await grossOf(before.jobId)).toBe(7200);
    expect(await grossOf(after.jobId)).toBe(9900);
  });
});

test('every repair of the demonstration has had its price since the list was made', async () => {
  await transaction((tx) => loadCatalogue(tx, now));
  expect(await db.repairPrice.count()).toBe(DEMO_REPAIRS.length);
  const [price] = await priceHistory(demoId('repair', 'gull/usb-socket'));
  expect(price).toMatchObject({ priceMinor: 5800, who: null });
  expect(price?.since.getTime()).toBeLessThan(now.getTime());
});
