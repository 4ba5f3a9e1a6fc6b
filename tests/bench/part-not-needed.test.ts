import { beforeEach, describe, expect, test } from 'vitest';
import { leaveBeside } from '@/lib/bench/leave-beside';
import { readOrderList } from '@/lib/bench/order-records';
import { listParts, readPart } from '@/lib/bench/part-records';
import { proveBeside } from '@/lib/bench/prove-beside';
import { sayIfNeeded } from '@/lib/bench/say-if-needed';
import { partsShort, partsToComeOf } from '@/lib/bench/stored-parts-to-come';
import { usePartOnJob } from '@/lib/bench/use-part-on-job';
import { day, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { putUnderRepair } from '@/lib/jobs/put-under-repair';
import { recordWork } from '@/lib/jobs/record-work';
import { stopRepair } from '@/lib/jobs/stop-repair';
import { awaitedPartsOf } from '@/lib/jobs/stored-awaited-parts';
import { readToday } from '@/lib/jobs/today';
import { waitForParts } from '@/lib/jobs/wait-for-parts';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { lapsePrices } from '@/lib/quotes/write-lapses';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob, takeMove, versionOf } from '@/tests/makers/course';
import { askPrice, PAD } from '@/tests/makers/offer';
import { makeFaderRepair } from '@/tests/makers/second-repair';
import { FADER, SOCKET } from '@/tests/makers/two-repairs';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let partId: string;
let jobId: string;
useDatabase();
beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(now);
  partId = (await db.part.findFirstOrThrow()).id;
  await db.part.updateMany({ data: { reorderAt: null } });
  await db.lot.updateMany({ data: { inStock: 0 } });
  jobId = await assessedJob(world, now);
}, 30_000);

const usual = (repairId: string, quantity = 1) =>
  db.repairPart.create({ data: { repairId, partId, quantity } });
const say = async (isNeeded: boolean, of = jobId) =>
  sayIfNeeded({ jobId: of, version: await versionOf(of), partId, isNeeded, actor: BENCH, now });
const wait = async (of = jobId, quantity = 1) =>
  waitForParts({
    jobId: of,
    version: await versionOf(of),
    parts: [{ partId, quantity }],
    expectedOn: null,
    actor: BENCH,
    now,
  });
/** Pieces to order for open jobs alone: the part has no mark. */
const toOrder = async () => (await readOrderList(now)).rows.map(({ order }) => order);
const waits = async (of = jobId) => awaitedPartsOf(await jobNow(of));

describe('a part that the repair usually takes', () => {
  test('is not ordered once it is not needed, and is again once it is needed after all', async () => {
    await usual(world.repairId, 2);
    expect(await toOrder()).toEqual([2]);
    await say(false);
    expect(await toOrder()).toEqual([]);
    expect(partsToComeOf(await jobNow(jobId))).toMatchObject([{ partId, quantity: 2, isNeeded: false }]);
    await say(true);
    expect(await toOrder()).toEqual([2]);
    const { events } = await jobNow(jobId);
    expect(events.slice(-2)).toMatchObject([
      { kind: 'part-not-needed', actorId: BENCH.id, data: { partId, part: 'USB-C socket, 16 pin' } },
      { kind: 'part-needed', actorId: BENCH.id },
    ]);
  });

  test('stays not needed when the work is opened again, and counts anew under another repair that takes it', async () => {
    await usual(world.repairId);
    const { repairId } = await makeFaderRepair(world, now);
    await usual(repairId, 3);
    await takeMove(jobId, 'start-bench', now);
    await say(false);
    await recordWork({ jobId, text: 'The old socket soldered again', minutes: 30, actor: BENCH, now });
    await takeMove(jobId, 'prove', now);
    await takeMove(jobId, 'reopen-work', now);
    expect(await toOrder()).toEqual([]);
    await putUnderRepair({ jobId, version: await versionOf(jobId), repairId, actor: BENCH, now });
    expect(await toOrder()).toEqual([3]);
  });
});

describe('a part that was not needed for the work agreed before', () => {
  const at = (hour: number) => new Date(Date.UTC(2026, 10, 25, hour));
  const socket = { ...PAD, kind: 'part' as const, description: 'USB-C socket', amount: 1200 };
  const sayAt = async (hour: number) =>
    sayIfNeeded({
      jobId,
      version: await versionOf(jobId),
      partId,
      isNeeded: false,
      actor: BENCH,
      now: at(hour),
    });

  test.each([
    ['is counted again with a yes to a price with a part in it', [PAD, socket], [1]],
    ['stays not needed with a yes to one for work alone', [PAD], []],
  ])('%s', async (_name, lines, order) => {
    await usual(world.repairId);
    await sayAt(10);
    await askPrice(jobId, at(11), { lines });
    expect(await toOrder()).toEqual([]);
    await decideOffer({ jobId, revision: 2, decision: 'accepted', now: at(12) });
    expect(await toOrder()).toEqual(order);
  });

  test('stays not needed where that was said of the price itself', async () => {
    await usual(world.repairId);
    await askPrice(jobId, at(11), { lines: [PAD, socket] });
    await sayAt(12);
    await decideOffer({ jobId, revision: 2, decision: 'accepted', now: at(13) });
    expect(await toOrder()).toEqual([]);
  });

  test('is counted again with a yes that is written down after the price lapsed, though it was said after that', async () => {
    await usual(world.repairId);
    await askPrice(jobId, at(11), { lines: [PAD, socket] });
    await lapsePrices(new Date('2026-12-26T06:00:00Z'));
    const later = new Date('2026-12-28T09:00:00Z');
    await takeMove(jobId, 'start-bench', later);
    await sayIfNeeded({
      jobId,
      version: await versionOf(jobId),
      partId,
      isNeeded: false,
      actor: BENCH,
      now: later,
    });
    expect(await toOrder()).toEqual([]);
    await decideOffer({
      ...{
        jobId,
        revision: 2,
        decision: 'accepted',
        actor: OWNER,
        now: later,
        version: await versionOf(jobId),
      },
      told: { how: 'telephone', on: day('2026-12-18'), words: 'Yes, go ahead.' },
    });
    expect(await toOrder()).toEqual([1]);
  });
});

describe('what two repairs of a job usually take', () => {
  const LATER = new Date(now.getTime() + 1000);

  /** Both agreed to; gives the second. */
  async function agreeToBoth() {
    const { repairId } = await makeFaderRepair(world, now);
    await usual(world.repairId, 2);
    await usual(repairId, 3);
    const revision = await askPrice(jobId, now, { lines: [SOCKET, FADER] });
    await decideOffer({ jobId, revision, decision: 'accepted', actor: { kind: 'customer' }, now });
    return repairId;
  }

  test('is ordered for both, and is still to come for both', async () => {
    await agreeToBoth();
    expect(await toOrder()).toEqual([5]);
    expect(partsToComeOf(await jobNow(jobId))).toMatchObject([{ partId, quantity: 5 }]);
    expect(partsShort(await jobNow(jobId), await listParts())).toMatchObject([{ partId, quantity: 5 }]);
    await db.lot.updateMany({ data: { inStock: 5 } });
    expect(partsShort(await jobNow(jobId), await listParts())).toEqual([]);
  });

  test('is still ordered for both when the job is put under the other, until one is left out', async () => {
    const repairId = await agreeToBoth();
    await putUnderRepair({
      jobId,
      version: await versionOf(jobId),
      repairId,
      actor: BENCH,
      now: LATER,
    });
    expect(await toOrder()).toEqual([5]);
    const [beside] = (await jobNow(jobId)).besides;
    await leaveBeside({
      jobId,
      version: await versionOf(jobId),
      besideId: beside?.id ?? '',
      actor: BENCH,
      now: LATER,
    });
    expect(await toOrder()).toEqual([3]);
  });

  test('counts anew once a repair that takes it is added at the bench: of that one nobody had said it', async () => {
    const { repairId } = await makeFaderRepair(world, now);
    await usual(world.repairId);
    await usual(repairId, 3);
    await say(false);
    await proveBeside({ jobId, version: await versionOf(jobId), repairId, actor: BENCH, now: LATER });
    expect(await toOrder()).toEqual([4]);
  });

  test('counts anew with a yes that names the other, though the price is for work alone', async () => {
    await usual(world.repairId, 2);
    await say(false);
    const { repairId } = await makeFaderRepair(world, now);
    await usual(repairId, 3);
    const revision = await askPrice(jobId, now, { lines: [SOCKET, FADER] });
    expect(await toOrder()).toEqual([]);
    await decideOffer({ jobId, revision, decision: 'accepted', actor: { kind: 'customer' }, now });
    expect(await toOrder()).toEqual([5]);
  });

  test('stays not needed when the job is put under the other: it was said of the one kept', async () => {
    const repairId = await agreeToBoth();
    await db.repairPart.deleteMany({ where: { repairId } });
    await say(false);
    await putUnderRepair({ jobId, version: await versionOf(jobId), repairId, actor: BENCH, now: LATER });
    expect(await toOrder()).toEqual([]);
  });

  test('is not proposed to wait for once it is not needed', async () => {
    await agreeToBoth();
    await say(false);
    expect(partsShort(await jobNow(jobId), await listParts())).toEqual([]);
  });
});

describe('a part that a job waits for', () => {
  test('is waited for no more, and the job is for the bench', async () => {
    await wait();
    expect(await toOrder()).toEqual([1]);
    await say(false);
    expect(await toOrder()).toEqual([]);
    expect(await waits()).toMatchObject([{ partId, quantity: 0, isNeeded: false }]);
    expect((await readPart(partId))?.waiting).toEqual([]);
    const { lists } = await readToday(now);
    expect([...lists.late, ...lists.onUs]).toMatchObject([
      { wait: { step: 'part-is-here' }, job: { isPartHere: true } },
    ]);
    await say(true);
    expect(await waits()).toMatchObject([{ partId, quantity: 1, isNeeded: true }]);
    expect((await readPart(partId))?.waiting).toHaveLength(1);
  });

  test('takes no turn before another job, on the bench or waiting', async () => {
    const other = await assessedJob(world, now);
    await db.job.update({ where: { id: jobId }, data: { promisedOn: dayToDate(day('2026-12-07')) } });
    await db.job.update({ where: { id: other }, data: { promisedOn: dayToDate(day('2026-12-08')) } });
    for (const each of [jobId, other]) await wait(each);
    await db.lot.updateMany({ data: { inStock: 1 } });
    expect(await waits(other)).toMatchObject([{ here: 0 }]);
    await say(false);
    expect(await waits(other)).toMatchObject([{ here: 1 }]);
    await say(true);
    await takeMove(jobId, 'parts-in', now);
    expect(await waits(other)).toMatchObject([{ here: 0 }]);
    await say(false);
    expect(await waits(other)).toMatchObject([{ here: 1 }]);
  });

  test('is needed again once the job is said to wait for it anew', async () => {
    await usual(world.repairId);
    await say(false);
    await wait(jobId, 2);
    expect(await waits()).toMatchObject([{ quantity: 2, isNeeded: true }]);
    expect(await toOrder()).toEqual([2]);
  });

  test('takes no turn and is not ordered for a job that goes back unrepaired', async () => {
    await usual(world.repairId);
    await wait();
    await stopRepair({
      jobId,
      version: await versionOf(jobId),
      why: 'cannot-repair',
      reason: 'The board is cracked through.',
      actor: BENCH,
      now,
    });
    expect(await toOrder()).toEqual([]);
    const other = await assessedJob(world, now);
    await wait(other);
    await db.lot.updateMany({ data: { inStock: 1 } });
    expect(await waits(other)).toMatchObject([{ here: 1 }]);
    await expect(say(false)).rejects.toMatchObject({ code: 'conflict' });
  });
});

describe('is refused', () => {
  test('of a part the job does not take, or has taken, and on a page that is old', async () => {
    await expect(say(false)).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringContaining('neither waits'),
    });
    await usual(world.repairId);
    await db.lot.updateMany({ data: { inStock: 1 } });
    const old = await versionOf(jobId);
    await usePartOnJob({ jobId, version: old, lotId: world.lotId, quantity: 1, actor: BENCH, now });
    await expect(say(false)).rejects.toMatchObject({ message: expect.stringContaining('has taken it') });
    const press = { jobId, partId, isNeeded: false, actor: BENCH, now };
    await expect(sayIfNeeded({ ...press, version: old })).rejects.toMatchObject({ code: 'conflict' });
    expect(await db.partNotNeeded.count()).toBe(0);
  });

  test('said twice', async () => {
    await usual(world.repairId);
    await say(false);
    await expect(say(false)).rejects.toMatchObject({
      message: expect.stringContaining('said of the part already'),
    });
    await say(true);
    await expect(say(true)).rejects.toMatchObject({
      message: expect.stringContaining('said of the part already'),
    });
  });
});
