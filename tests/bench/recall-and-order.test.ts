import { parse } from 'csv-parse/sync';
import { beforeEach, describe, expect, test } from 'vitest';
import { lotsInStock } from '@/lib/bench/lots-in-stock';
import { orderCsv, readOrderList } from '@/lib/bench/order-records';
import { listParts, readPart } from '@/lib/bench/part-records';
import { putBackPart } from '@/lib/bench/put-back-part';
import { recallLot } from '@/lib/bench/recall-lot';
import { recallsOf, recallUnits } from '@/lib/bench/recall-records';
import { orderList, stillNeeded, usualPieces } from '@/lib/bench/rules/order-list';
import { isCell, recallText } from '@/lib/bench/rules/recall-text';
import { writePartUse } from '@/lib/bench/write-part-use';
import { putUsualPart, usualPartsOf } from '@/lib/catalogue/usual-parts';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { factsOf } from '@/lib/jobs/facts';
import { mayMove } from '@/lib/jobs/rules/guards';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob, takeMove, versionOf } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { jobNow, makeCertificate } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');

describe('what to order', () => {
  const part = { id: 'p', code: 'USB', name: 'Socket', inStock: 5, reorderAt: 3 };
  test.each([
    { name: 'above the mark', needed: 1, order: null },
    { name: 'at the mark once open jobs have theirs', needed: 2, order: 1 },
    { name: 'more needed than there is', needed: 7, order: 6 },
  ])('$name', ({ needed, order }) => {
    const [row] = orderList([part], new Map([['p', needed]]), new Map());
    expect(row?.order ?? null).toBe(order);
    if (row) expect(row.left + row.order).toBe(part.reorderAt + 1);
  });

  test.each([
    { name: 'kept in stock no more', inStock: 0, needed: 0, order: null },
    { name: 'no more, and enough for the last job', inStock: 1, needed: 1, order: null },
    { name: 'no more, and one short for the last job', inStock: 1, needed: 2, order: 1 },
  ])('a part without a mark: $name', ({ inStock, needed, order }) => {
    const [row] = orderList([{ ...part, inStock, reorderAt: null }], new Map([['p', needed]]), new Map());
    expect(row?.order ?? null).toBe(order);
  });

  test('a job needs what its repair usually takes, less what it took', () => {
    const usual = [{ partId: 'p', quantity: 2 }];
    const needed = stillNeeded([
      { usual, awaited: [], taken: [], notNeeded: [] },
      { usual, awaited: [], taken: [{ partId: 'p', quantity: 1 }], notNeeded: [] },
      { usual, awaited: [], taken: [{ partId: 'p', quantity: 3 }], notNeeded: [] },
      { usual, awaited: usual, taken: [], notNeeded: ['p'] },
      { usual: [], awaited: [], taken: [], notNeeded: [] },
    ]);
    expect([...needed]).toEqual([['p', 3]]);
  });

  test('a job usually takes the pieces of its repair and of each beside it, those of one part together', () => {
    const done = (...usualParts: { partId: string; quantity: number }[]) => ({ repair: { usualParts } });
    const screws = (quantity: number) => ({ partId: 'screws', quantity });
    const fader = { partId: 'fader', quantity: 1 };
    expect(
      usualPieces({
        ...done(screws(2)),
        besides: [{ sheet: done(screws(3), fader) }, { sheet: done(screws(1)) }],
      }),
    ).toEqual([screws(6), fader]);
    expect(usualPieces({ ...done(fader), besides: [] })).toEqual([fader]);
  });

  test.each([
    { name: 'more than is usual', awaited: 3, taken: 0, needed: 3 },
    { name: 'fewer than is usual', awaited: 1, taken: 0, needed: 2 },
    { name: 'more than is left of what is usual', awaited: 2, taken: 1, needed: 2 },
    { name: 'none any more, and took what is usual', awaited: 0, taken: 2, needed: 0 },
  ])('a job that waits for $name', ({ awaited, taken, needed }) => {
    const pieces = (quantity: number) => [{ partId: 'p', quantity }];
    const job = { usual: pieces(2), awaited: pieces(awaited), taken: pieces(taken), notNeeded: [] };
    expect(stillNeeded([job]).get('p') ?? 0).toBe(needed);
  });

  test('the scarcest stands first', () => {
    const rows = orderList(
      [
        { ...part, inStock: 3 },
        { ...part, id: 'q', inStock: 0 },
      ],
      new Map(),
      new Map(),
    );
    expect(rows.map((row) => row.id)).toEqual(['q', 'p']);
  });
});

test('a cell in doubt is neither charged nor posted; any other part is sent in free of charge', () => {
  expect(isCell('Lithium-ion cell, 2.5 Ah')).toBe(true);
  for (const name of [
    'Battery CELL-25',
    'Li-ion pack 3.7 V 2000 mAh',
    'LiPo 1200 mAh',
    '18650 with tabs',
    'Accu 2.5 Ah',
  ])
    expect(isCell(name)).toBe(true);
  expect(isCell('Liaison board, 18 pins')).toBe(false);
  expect(isCell('USB-C socket')).toBe(false);
  expect(recallText({ part: 'Lithium-ion cell' })).toMatch(
    /do not charge it[\s\S]*do not post it[\s\S]*free of charge/i,
  );
  expect(recallText({ part: 'Socket' })).toMatch(/stop using it[\s\S]*free of charge/);
});

describe('with a database', () => {
  let world: Awaited<ReturnType<typeof makeWorkshop>>;
  useDatabase();
  beforeEach(async () => {
    await resetDatabase();
    world = await makeWorkshop(now);
  }, 30_000);

  const take = (jobId: string, quantity = 1) =>
    transaction((tx) => writePartUse(tx, { jobId, lotId: world.lotId, quantity, userId: BENCH.id, now }));
  const formKey = '0199b3a2-0000-7000-8000-000000000003';
  const recall = (letters: number, key = formKey) =>
    recallLot({ lotId: world.lotId, text: 'Stop.', letters, formKey: key, actor: OWNER, now });

  test('open jobs count into the list, and its cells run in no spreadsheet', async () => {
    const part = await db.part.findFirstOrThrow();
    await db.part.update({ where: { id: part.id }, data: { reorderAt: 4, name: '=1+1, socket' } });
    expect((await readOrderList(now)).rows).toEqual([]);
    await db.repairPart.create({ data: { repairId: world.repairId, partId: part.id, quantity: 1 } });
    await makeBooking({ repairId: world.repairId, now });
    const { rows, jobs } = await readOrderList(now);
    expect(jobs).toBe(1);
    expect(rows).toMatchObject([{ code: 'USB-C-16', inStock: 5, needed: 1, left: 4, order: 1 }]);
    const [, line] = parse(orderCsv(rows), { bom: true }) as string[][];
    expect(line?.[1]).toBe("'=1+1, socket");
    expect(line?.slice(2, 6)).toEqual(['1', '5', '0', '1']);
  });

  test('one letter a unit that is with its owner, in one go, once', async () => {
    const { jobId } = await makeCertificate(world, now);
    await take(jobId);
    await take(jobId);
    const { jobId: here } = await makeBooking({ repairId: world.repairId, now, serial: 'HW2-10481-K' });
    await take(here);
    const units = await recallUnits(world.lotId);
    expect(units.map((unit) => unit.what)).toEqual(['letter', 'here']);
    await recall(1);
    await recall(1);
    const mails = await db.mail.findMany({ where: { template: 'lot-recall' } });
    expect(mails).toMatchObject([
      {
        jobId,
        toAddress: 'maren.holt@example.org',
        data: { part: 'USB-C socket, 16 pin', lot: 'L-2611', text: 'Stop.' },
      },
    ]);
    expect(await recallsOf(world.lotId)).toMatchObject([{ mails: 1, text: 'Stop.', userId: OWNER.id }]);
    const told = await db.jobEvent.findMany({ where: { kind: 'lot-recalled' }, select: { jobId: true } });
    expect(new Set(told.map((event) => event.jobId))).toEqual(new Set([jobId, here]));
  });

  test('a unit that is here does not leave with a piece of a recalled lot, and no further piece is taken', async () => {
    const { jobId } = await makeCertificate(world, now);
    await take(jobId);
    const here = await assessedJob(world, now);
    await takeMove(here, 'start-bench', now);
    await take(here);
    await recall(1);
    await expect(take(here)).rejects.toMatchObject({ message: 'Lot L-2611 was recalled: take another.' });
    expect(await lotsInStock()).toEqual([]);
    const facts = factsOf(await jobNow(here));
    expect(facts.recalledParts).toEqual(['USB-C socket, 16 pin, lot L-2611']);
    for (const move of ['pass-checks', 'dispatch'] as const) {
      const answer = mayMove(move, facts, 'staff');
      expect(answer.allowed ? [] : answer.reasons).toContain('no-recalled-part');
    }
    const { id: partUseId } = await db.partUse.findFirstOrThrow({ where: { jobId: here } });
    const { version } = await jobNow(here);
    await putBackPart({ jobId: here, version, partUseId, actor: BENCH, now });
    expect(factsOf(await jobNow(here)).recalledParts).toEqual([]);
  });

  test('a lot of which every unit is here, or without an address, is stopped without a letter', async () => {
    const { jobId: gone } = await makeCertificate(world, now);
    await take(gone);
    await db.customer.updateMany({ data: { email: '', erasedAt: now } });
    const here = await assessedJob(world, now);
    await takeMove(here, 'start-bench', now);
    await take(here);
    await recall(0);
    await recall(0);
    expect(await recallsOf(world.lotId)).toMatchObject([{ mails: 0, text: 'Stop.' }]);
    expect(await db.mail.count({ where: { template: 'lot-recall' } })).toBe(0);
    expect(await db.jobEvent.findMany({ where: { kind: 'lot-recalled' } })).toMatchObject([{ jobId: here }]);
    await db.part.updateMany({ data: { name: 'Socket, renamed' } });
    // The one without an address may still come back to us.
    for (const jobId of [here, gone])
      expect(factsOf(await jobNow(jobId)).recalledParts).toEqual(['Socket, renamed, lot L-2611']);
  });

  test('what lies in a recalled lot is no stock', async () => {
    const { partId } = await db.lot.findUniqueOrThrow({ where: { id: world.lotId } });
    await putUsualPart({ repairId: world.repairId, code: 'USB-C-16', quantity: 1 });
    const stock = async () => ({
      list: (await listParts()).map(({ inStock, isLow }) => ({ inStock, isLow })),
      part: (await readPart(partId))?.inStock,
      usual: (await usualPartsOf(world.repairId)).map(({ inStock }) => inStock),
      order: (await readOrderList(now)).rows.map(({ inStock, order }) => ({ inStock, order })),
    });
    const here = await assessedJob(world, now);
    await take(here);
    expect(await stock()).toEqual({ list: [{ inStock: 4, isLow: false }], part: 4, usual: [4], order: [] });
    await recall(0);
    const none = {
      list: [{ inStock: 0, isLow: true }],
      part: 0,
      usual: [0],
      order: [{ inStock: 0, order: 1 }],
    };
    expect(await stock()).toEqual(none);
    const { id: partUseId } = await db.partUse.findFirstOrThrow({ where: { jobId: here } });
    await putBackPart({ jobId: here, version: await versionOf(here), partUseId, actor: BENCH, now });
    // The repair needs its piece again: one for the mark, one for the job.
    expect(await stock()).toEqual({ ...none, order: [{ inStock: 0, order: 2 }] });
  });

  test('nobody is written to when the list is another than was looked at, or empty', async () => {
    await expect(recall(0)).rejects.toMatchObject({ code: 'invalid' });
    const { jobId } = await makeCertificate(world, now);
    await take(jobId);
    await expect(recall(2)).rejects.toMatchObject({ code: 'conflict' });
    await db.customer.updateMany({ data: { email: '', erasedAt: now } });
    await expect(recall(1)).rejects.toMatchObject({ code: 'invalid' });
    expect(await db.mail.count({ where: { template: 'lot-recall' } })).toBe(0);
    expect(await db.lotRecall.count()).toBe(0);
  });
});
