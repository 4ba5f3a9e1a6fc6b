import { beforeEach, describe, expect, test } from 'vitest';
import { addLot } from '@/lib/bench/add-lot';
import { addToLot } from '@/lib/bench/add-to-lot';
import { correctLot } from '@/lib/bench/correct-lot';
import { lotsInStock } from '@/lib/bench/lots-in-stock';
import { listParts, readLot, readPart } from '@/lib/bench/part-records';
import { lotEventLine } from '@/lib/bench/rules/lot-events';
import { savePart } from '@/lib/bench/save-part';
import { writeOffLot } from '@/lib/bench/write-off-lot';
import { writePartUse } from '@/lib/bench/write-part-use';
import { day, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { shownNow } from '@/tests/makers/shown';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');
let lotId = '';
let jobId = '';

useDatabase();
beforeEach(async () => {
  await resetDatabase();
  const made = await makeWorkshop(now);
  lotId = made.lotId;
  ({ jobId } = await makeBooking({ repairId: made.repairId, now }));
}, 30_000);

const take = (quantity: number) =>
  transaction((tx) => writePartUse(tx, { jobId, lotId, quantity, userId: BENCH.id, now }));
const history = async () => {
  const lot = await readLot(lotId, day('2026-11-25'));
  const setting = { locale: 'en-GB', currency: 'GBP' };
  return lot?.events.map(({ kind, data, userId, at }) => ({
    userId,
    at,
    line: lotEventLine(kind, data, setting),
  }));
};
const stock = async () => (await db.lot.findUniqueOrThrow({ where: { id: lotId } })).inStock;

describe('taking a part', () => {
  test('lowers the stock and keeps the cost it had', async () => {
    const taken = await take(2);
    expect(taken).toMatchObject({
      part: 'USB-C socket, 16 pin',
      lot: 'L-2611',
      quantity: 2,
      unitCostMinor: 180,
    });
    expect(await stock()).toBe(3);
    await db.lot.update({ where: { id: lotId }, data: { unitCostMinor: 999 } });
    expect(await db.partUse.findUnique({ where: { id: taken.partUseId } })).toMatchObject({
      unitCostMinor: 180,
    });
  });

  test('takes the last piece and then no more', async () => {
    await take(5);
    expect(await stock()).toBe(0);
    await expect(take(1)).rejects.toMatchObject({
      code: 'conflict',
      message: 'Lot L-2611 has 0 left, not 1.',
    });
    expect(await db.partUse.count()).toBe(1);
  });

  test('more than there is takes nothing', async () => {
    await expect(take(6)).rejects.toMatchObject({ code: 'conflict' });
    expect(await stock()).toBe(5);
  });

  test.each([0, -1, 1.5])('%d pieces are refused', async (quantity) => {
    await expect(take(quantity)).rejects.toMatchObject({ code: 'invalid', field: 'quantity' });
  });

  test('the database itself refuses stock below nothing and above what came', async () => {
    await expect(db.lot.update({ where: { id: lotId }, data: { inStock: -1 } })).rejects.toThrow();
    await expect(db.lot.update({ where: { id: lotId }, data: { inStock: 6 } })).rejects.toThrow();
  });

  test('pieces lost or broken leave the stock without a job', async () => {
    const off = { lotId, reason: 'Bent pins', userId: BENCH.id, now };
    expect(await writeOffLot({ ...off, inStock: 5, quantity: 4 })).toBe(1);
    await expect(writeOffLot({ ...off, inStock: 5, quantity: 1 })).rejects.toMatchObject({
      code: 'conflict',
    });
    await expect(writeOffLot({ ...off, inStock: 1, quantity: 2 })).rejects.toMatchObject({
      code: 'conflict',
    });
    expect(await stock()).toBe(1);
    expect(await history()).toEqual([
      { userId: BENCH.id, at: now, line: 'Written off: 4 pieces. Bent pins' },
    ]);
    await expect(db.lotEvent.deleteMany()).rejects.toThrow();
  });
});

describe('parts and lots', () => {
  const part = { code: 'SW-1', name: 'Switch', term: 'P12M', reorderAt: 3 };
  const lot = {
    code: 'A1',
    supplier: 'Nesbrook Parts',
    receivedOn: day('2026-11-20'),
    received: 3,
    unitCostMinor: 210,
  };

  test('a delivery is all in stock, and low when it is at the mark', async () => {
    const partId = await savePart(null, part);
    await addLot({ ...lot, partId });
    expect((await listParts()).find((row) => row.id === partId)).toMatchObject({
      inStock: 3,
      lots: 1,
      isLow: true,
    });
    expect(await readPart(partId)).toMatchObject({
      lots: [{ receivedOn: '2026-11-20', used: 0, inStock: 3 }],
    });
  });

  test('a lot code comes once for a part, and again for another part', async () => {
    const partId = await savePart(null, part);
    const other = await savePart(null, { ...part, code: 'SW-2' });
    await addLot({ ...lot, partId });
    await addLot({ ...lot, partId: other });
    await expect(addLot({ ...lot, partId })).rejects.toMatchObject({ code: 'conflict', field: 'code' });
  });

  test('more pieces of a lot are added once, however often they are sent, at the mean of their cost', async () => {
    const partId = await savePart(null, part);
    const id = await addLot({ ...lot, partId });
    const more = { lotId: id, received: 3, quantity: 6, unitCostMinor: 240, userId: BENCH.id, now };
    const sent = await Promise.allSettled([addToLot(more), addToLot(more)]);
    expect(sent.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    // 3 at 210 and 6 at 240 are 2,070 for 9.
    const kept = await db.lot.findUniqueOrThrow({ where: { id } });
    expect(kept).toMatchObject({ received: 9, inStock: 9, unitCostMinor: 230 });
    expect(await db.lotEvent.findMany({ where: { lotId: id } })).toMatchObject([
      { kind: 'added', data: { quantity: 6, unitCostMinor: 240 } },
    ]);
  });

  test('a part without a mark is never low', async () => {
    const id = await savePart(null, { ...part, reorderAt: null });
    const [row] = (await listParts()).filter((each) => each.id === id);
    expect(row).toMatchObject({ inStock: 0, reorderAt: null, isLow: false });
  });

  test('a mistyped lot is put right, once, with what it said before; fitted pieces keep their cost', async () => {
    await take(2);
    const by = { userId: BENCH.id, now };
    const facts = {
      code: 'L-2616',
      supplier: 'Nesbrook Parts',
      receivedOn: day('2026-11-24'),
      unitCostMinor: 210,
    };
    const shown = await shownNow('lot', lotId);
    await correctLot(shown, facts, by);
    await expect(correctLot(shown, { ...facts, code: 'L-2617' }, by)).rejects.toMatchObject({
      code: 'conflict',
    });
    await correctLot(await shownNow('lot', lotId), facts, by);
    expect(await readLot(lotId, day('2026-11-25'))).toMatchObject({ ...facts, inStock: 3 });
    expect(await history()).toEqual([
      {
        userId: BENCH.id,
        at: now,
        line: 'Corrected: Lot: L-2616, was L-2611; Supplier: Nesbrook Parts, was Harbour Components; Received on: 24 Nov 2026, was 25 Nov 2026; Cost of one: £2.10, was £1.80',
      },
    ]);
    expect(await db.partUse.findFirst()).toMatchObject({ unitCostMinor: 180 });
    await addLot({ ...lot, partId: (await db.part.findFirstOrThrow()).id });
    const twice = correctLot(await shownNow('lot', lotId), { ...facts, code: 'A1' }, by);
    await expect(twice).rejects.toMatchObject({ code: 'conflict', field: 'code' });
  });

  test.each([
    { name: 'a code in use', input: { ...part, code: 'USB-C-16' }, field: 'code' },
    { name: 'a term nobody can count', input: { ...part, term: 'a year' }, field: 'term' },
    { name: 'a term that leaves the calendar', input: { ...part, term: 'P9999Y' }, field: 'term' },
  ])('a part with $name is refused', async ({ input, field }) => {
    await expect(savePart(null, input)).rejects.toMatchObject({ field });
  });

  test('a part is changed under its id', async () => {
    const id = await savePart(null, part);
    await savePart(await shownNow('part', id), { ...part, name: 'Switch, three poles', term: null });
    expect(await readPart(id)).toMatchObject({ name: 'Switch, three poles', term: null });
    await expect(savePart({ id: 'none', mark: '' }, part)).rejects.toMatchObject({ code: 'not-found' });
  });

  test('an empty lot is not offered at the bench', async () => {
    expect((await lotsInStock()).map((row) => row.id)).toEqual([lotId]);
    await take(5);
    expect(await lotsInStock()).toEqual([]);
  });

  test('a lot leads to the units that carry it', async () => {
    await take(1);
    const found = await readLot(lotId, day('2026-11-25'));
    expect(found).toMatchObject({
      code: 'L-2611',
      inStock: 4,
      units: [
        { quantity: 1, stage: 'booked', certificateNumber: null, coveredUntil: null, hasLiveCover: false },
      ],
    });
    expect(await readLot('none', day('2026-11-25'))).toBeNull();
  });

  test('a unit is under cover to the last day its certificate in force states for the fitted part', async () => {
    await take(1);
    const first = await certificate(1, '2026-12-01');
    await db.certificate.update({ where: { id: first }, data: { supersededAt: now } });
    await db.certificate.create({ data: await revision(2, '2027-02-28', 'J0000000R2') });
    const unitOn = async (today: string) => (await readLot(lotId, day(today)))?.units[0];
    expect(await unitOn('2027-02-28')).toMatchObject({ coveredUntil: '2027-02-28', hasLiveCover: true });
    expect(await unitOn('2027-03-01')).toMatchObject({ coveredUntil: '2027-02-28', hasLiveCover: false });
  });
});

async function certificate(number: number, endsOn: string): Promise<string> {
  return (await db.certificate.create({ data: await revision(number, endsOn, null), select: { id: true } }))
    .id;
}

/** A revision of one certificate whose only line is the fitted part; a later one leaves with another job. */
async function revision(number: number, endsOn: string, otherJob: string | null) {
  const job = await db.job.findUniqueOrThrow({ where: { id: jobId } });
  const version = await db.policyVersion.findFirstOrThrow();
  const { id: _, ...copy } = job;
  const holder = otherJob ? await db.job.create({ data: { ...copy, number: otherJob } }) : job;
  const end = dayToDate(day(endsOn));
  return {
    number: 'W00000001',
    revision: number,
    jobId: holder.id,
    policyVersionId: version.id,
    modelName: 'Tideline',
    serialTyped: job.serialTyped,
    serialKey: job.serialKey,
    issuedAt: now,
    issuedOn: dayToDate(day('2026-11-25')),
    endsOn: end,
    keyId: 'k',
    signature: 's',
    fileKey: `certificates/${number}`,
    sha256: 'x',
    lines: {
      create: {
        key: 'part-1',
        position: 1,
        kind: 'part',
        description: 'USB-C socket',
        term: 'P12M',
        startsOn: dayToDate(day('2026-11-25')),
        endsOn: end,
        lotId,
      },
    },
  };
}
