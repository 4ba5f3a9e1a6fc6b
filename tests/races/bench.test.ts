import { beforeEach, describe, expect, it } from 'vitest';
import { expectOrder } from '@/lib/bench/change-order';
import { orderParts } from '@/lib/bench/order-parts';
import { putBackPart } from '@/lib/bench/put-back-part';
import { recallLot } from '@/lib/bench/recall-lot';
import { recordChecks } from '@/lib/bench/record-check';
import { savePinTable } from '@/lib/bench/save-pin-table';
import { sayIfNeeded } from '@/lib/bench/say-if-needed';
import { readOpenOrders } from '@/lib/bench/stored-orders';
import { takeNewestSheet } from '@/lib/bench/take-newest-sheet';
import { usePartOnJob } from '@/lib/bench/use-part-on-job';
import { writePartUse } from '@/lib/bench/write-part-use';
import { day } from '@/lib/calendar/day';
import { replacing } from '@/lib/catalogue/rules/sheet-changes';
import { saveCheckSheet } from '@/lib/catalogue/save-check-sheet';
import { readCheck } from '@/lib/catalogue/stored';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { addPhotos } from '@/lib/jobs/add-photo';
import { describePhoto } from '@/lib/jobs/describe-photo';
import { moveJob } from '@/lib/jobs/move';
import { putUnderRepair } from '@/lib/jobs/put-under-repair';
import { recordWork } from '@/lib/jobs/record-work';
import { takeBackEntry } from '@/lib/jobs/take-back-entry';
import { waitForParts } from '@/lib/jobs/wait-for-parts';
import { attempt } from '@/lib/outcome';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob, takeMove, versionOf } from '@/tests/makers/course';
import { makeFaderRepair } from '@/tests/makers/second-repair';
import { jobNow, makeCertificate, somePhoto } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');
const FOUR = [1, 2, 3, 4];
const formKey = '0199b3a2-0000-7000-8000-00000000000a';

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(now);
}, 60_000);

describe('at the bench, whoever races', () => {
  it('a letter about a lot pressed four times writes to each customer once', async () => {
    const { jobId } = await makeCertificate(world, now);
    await transaction((tx) =>
      writePartUse(tx, { jobId, lotId: world.lotId, quantity: 1, userId: BENCH.id, now }),
    );
    const letter = { lotId: world.lotId, text: 'Stop using it.', letters: 1, formKey, actor: OWNER, now };
    await Promise.all(FOUR.map(() => recallLot(letter)));
    expect(await db.lotRecall.count()).toBe(1);
    expect(await db.mail.count({ where: { template: 'lot-recall' } })).toBe(1);
    expect(await db.jobEvent.count({ where: { kind: 'lot-recalled' } })).toBe(1);
  });

  it('eight people who take a piece at once never take more than there is', async () => {
    const jobId = await assessedJob(world, now);
    const take = { jobId, lotId: world.lotId, quantity: 1, userId: BENCH.id, now };
    const outcomes = await Promise.all(
      Array.from({ length: 8 }, () => attempt(() => transaction((tx) => writePartUse(tx, take)))),
    );
    expect(outcomes.flatMap((each) => (each.ok ? [] : [each.refusal.code]))).toEqual([
      'conflict',
      'conflict',
      'conflict',
    ]);
    expect((await db.lot.findFirstOrThrow()).inStock).toBe(0);
    expect(await db.partUse.count()).toBe(5);
  });

  it('a part that four put back at once goes back once', async () => {
    const jobId = await assessedJob(world, now);
    const version = await versionOf(jobId);
    await usePartOnJob({ jobId, version, lotId: world.lotId, quantity: 2, actor: BENCH, now });
    const { id: partUseId } = await db.partUse.findFirstOrThrow();
    const press = { jobId, version: version + 1, partUseId, actor: BENCH, now };
    const outcomes = await Promise.all(FOUR.map(() => attempt(() => putBackPart(press))));
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(1);
    expect(await db.lot.findFirstOrThrow()).toMatchObject({ inStock: 5, received: 5 });
    expect(await db.partUse.count()).toBe(0);
    expect(await db.jobEvent.count({ where: { kind: 'part-put-back' } })).toBe(1);
  });

  it('a part that four say is not needed is said so once, and by one of them needed after all', async () => {
    const jobId = await assessedJob(world, now);
    const { id: partId } = await db.part.findFirstOrThrow();
    await db.repairPart.create({ data: { repairId: world.repairId, partId, quantity: 1 } });
    for (const isNeeded of [false, true]) {
      const press = { jobId, version: await versionOf(jobId), partId, isNeeded, actor: BENCH, now };
      const outcomes = await Promise.all(FOUR.map(() => attempt(() => sayIfNeeded(press))));
      expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(1);
      expect(outcomes.flatMap((each) => (each.ok ? [] : [each.refusal.code]))).toEqual([
        'conflict',
        'conflict',
        'conflict',
      ]);
      expect(await db.partNotNeeded.count()).toBe(isNeeded ? 0 : 1);
    }
  });

  it('a part is either said not to be needed or waited for, whoever presses first', async () => {
    const jobId = await assessedJob(world, now);
    const { id: partId } = await db.part.findFirstOrThrow();
    await db.repairPart.create({ data: { repairId: world.repairId, partId, quantity: 1 } });
    const press = { jobId, version: await versionOf(jobId), actor: BENCH, now };
    const outcomes = await Promise.all([
      attempt(() => sayIfNeeded({ ...press, partId, isNeeded: false })),
      attempt(() => waitForParts({ ...press, parts: [{ partId, quantity: 1 }], expectedOn: null })),
    ]);
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(1);
    expect((await db.partNotNeeded.count()) + (await db.awaitedPart.count())).toBe(1);
  });

  it('an order that four move at once is moved from day to day, none from a day it had no more', async () => {
    const { id: partId } = await db.part.findFirstOrThrow();
    const on = (date: number) => day(`2026-12-${String(date).padStart(2, '0')}`);
    const order = {
      pieces: [{ partId, quantity: 1 }],
      supplier: 'Gannet Parts',
      orderedOn: day('2026-11-25'),
    };
    await orderParts({ ...order, expectedOn: on(1), formKey, userId: BENCH.id, now });
    const { id: orderId } = await db.partOrder.findFirstOrThrow();
    await Promise.all(
      FOUR.map((at) => expectOrder({ orderId, expectedOn: on(at + 1), userId: BENCH.id, now })),
    );
    const [stored] = await readOpenOrders();
    const moves = stored?.moves ?? [];
    expect(moves).toHaveLength(4);
    const left = new Set(moves.map(({ from }) => from));
    const reached = new Set(moves.map(({ to }) => to));
    // Each day but the first was reached once, and each but the last was left once.
    expect(reached).toEqual(new Set(FOUR.map((at) => on(at + 1))));
    expect(left).toEqual(new Set([on(1), ...reached].filter((each) => each !== stored?.expectedOn)));
  });

  it('one of four replaces a pin table, the others are told', async () => {
    const input = { name: 'Case plug', source: '', text: '1 plus\n2 minus' };
    const replaces = await savePinTable({ input, replaces: null, userId: OWNER.id, now });
    const outcomes = await Promise.all(
      FOUR.map(() => attempt(() => savePinTable({ input, replaces, userId: OWNER.id, now }))),
    );
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(1);
    expect(await db.pinTable.count({ where: { retiredAt: null } })).toBe(1);
    expect(await db.pinTable.count()).toBe(2);
  });

  it('a check entered four times with one key stands once', async () => {
    const jobId = await assessedJob(world, now);
    await takeMove(jobId, 'start-bench', now);
    await recordWork({ jobId, text: 'Socket replaced', minutes: 40, actor: BENCH, now });
    await takeMove(jobId, 'prove', now);
    const result = { checkId: world.voltage, given: { reading: 5 }, note: '', entryId: formKey };
    await Promise.all(FOUR.map(() => recordChecks({ jobId, actor: BENCH, now, results: [result] })));
    expect(await db.checkEntry.count()).toBe(1);
    expect(await db.jobEvent.count({ where: { kind: 'check-recorded' } })).toBe(1);
  });

  it('one of four describes a photo, the others see a conflict', async () => {
    const jobId = await assessedJob(world, now);
    await addPhotos({ jobId, purpose: 'work', photos: [somePhoto()], actor: BENCH, now });
    const { id: photoId } = await db.photo.findFirstOrThrow();
    const version = await versionOf(jobId);
    const outcomes = await Promise.all(
      FOUR.map((at) =>
        attempt(() =>
          describePhoto({ jobId, version, photoId, caption: `By ${at}`, marks: [], actor: BENCH, now }),
        ),
      ),
    );
    const [winner, ...more] = outcomes.flatMap((outcome, at) => (outcome.ok ? [FOUR[at]] : []));
    expect(more).toEqual([]);
    expect((await db.photo.findFirstOrThrow()).caption).toBe(`By ${winner}`);
  });

  it('one of four puts a job under another repair, and a newer sheet of the one before is not taken beside it', async () => {
    const { repairId } = await makeFaderRepair(world, now);
    const jobId = await assessedJob(world, now);
    await takeMove(jobId, 'start-bench', now);
    const [voltage] = (await jobNow(jobId)).sheet.checks.map(readCheck);
    if (!voltage) throw new Error('no check');
    const change = replacing(1, { ...voltage, high: 5.5 });
    await saveCheckSheet({ repairId: world.repairId, basedOn: 1, change, now });
    const press = { jobId, version: await versionOf(jobId), now };
    const outcomes = await Promise.all([
      ...FOUR.map(() => attempt(() => putUnderRepair({ ...press, repairId, actor: BENCH }))),
      attempt(() => takeNewestSheet({ ...press, sheetVersion: 2, actor: OWNER })),
    ]);
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(1);
    const changes = { kind: { in: ['repair-changed', 'sheet-renewed'] } };
    expect(await db.jobEvent.count({ where: changes })).toBe(1);
    expect(await db.job.count({ where: { id: jobId, sheet: { repairId } } })).toBe(
      await db.job.count({ where: { id: jobId, repairId } }),
    );
  });

  it('the only work is either taken back or proved on, whoever presses first', async () => {
    const jobId = await assessedJob(world, now);
    await takeMove(jobId, 'start-bench', now);
    await recordWork({ jobId, text: 'Socket replaced', minutes: 40, actor: BENCH, now });
    const { version, work } = await jobNow(jobId);
    const entry = { what: 'work', id: work[0]?.id ?? '', reason: 'Of another job.' } as const;
    const press = { jobId, version, actor: BENCH, now };
    const outcomes = await Promise.all([
      ...FOUR.map(() => attempt(() => takeBackEntry({ ...press, ...entry }))),
      attempt(() => moveJob({ ...press, move: 'prove', note: '' })),
    ]);
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(1);
    const after = await jobNow(jobId);
    expect(after.work).toHaveLength(after.stage === 'proving' ? 1 : 0);
  });
});
