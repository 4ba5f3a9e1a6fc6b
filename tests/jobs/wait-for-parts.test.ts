import { beforeEach, describe, expect, test } from 'vitest';
import { addToLot } from '@/lib/bench/add-to-lot';
import { endOrder } from '@/lib/bench/change-order';
import { orderParts } from '@/lib/bench/order-parts';
import { readOrderList } from '@/lib/bench/order-records';
import { readPart } from '@/lib/bench/part-records';
import { usePartOnJob } from '@/lib/bench/use-part-on-job';
import { addDays, day, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { recordWork } from '@/lib/jobs/record-work';
import { type AwaitedPart, awaitedWords, comingOn, isHere, partsWait } from '@/lib/jobs/rules/awaited-parts';
import { eventLine } from '@/lib/jobs/rules/events';
import { awaitedPartsOf } from '@/lib/jobs/stored-awaited-parts';
import { readToday } from '@/lib/jobs/today';
import { type WaitedFor, waitForParts } from '@/lib/jobs/wait-for-parts';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob, takeMove, versionOf, waitForPart } from '@/tests/makers/course';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');
const today = day('2026-11-25');

function part(some: Partial<AwaitedPart>): AwaitedPart {
  return {
    partId: 'p',
    name: 'Socket',
    quantity: 1,
    here: 0,
    isOnOrder: true,
    isNeeded: true,
    expectedOn: null,
    ...some,
  };
}

describe('the rules', () => {
  test.each<[string, Partial<AwaitedPart>, boolean, string]>([
    ['enough in stock', { here: 1 }, true, 'Socket: in stock'],
    ['one short', { here: 1, quantity: 2 }, false, '2 × Socket: no day known'],
    ['on order', { expectedOn: day('2026-12-03') }, false, 'Socket: expected 3 Dec 2026'],
    ['over its day', { expectedOn: day('2026-11-23') }, false, 'Socket: expected 23 Nov 2026, 2 days over'],
    ['taken already', { quantity: 0 }, true, 'Socket: taken'],
    ['not needed any more', { isNeeded: false, isOnOrder: false, quantity: 0 }, true, 'Socket: not needed'],
    ['not ordered', { isOnOrder: false }, false, 'Socket: not ordered, no day known'],
    [
      'not on the list of parts',
      { partId: null, isOnOrder: false, expectedOn: day('2026-12-03') },
      false,
      'Socket: expected 3 Dec 2026',
    ],
    ['not on the list, whatever is in stock', { partId: null, here: 5 }, false, 'Socket: no day known'],
  ])('%s', (_name, some, here, words) => {
    expect(isHere(part(some))).toBe(here);
    expect(awaitedWords(part(some), { today, locale: 'en-GB' })).toBe(words);
  });

  const here = { here: 1 };
  const soon = { expectedOn: day('2026-12-03') };
  const later = { expectedOn: day('2026-12-10') };
  const over = { expectedOn: day('2026-11-23') };
  test.each<[string, Partial<AwaitedPart>[], ReturnType<typeof partsWait>, string | null]>([
    ['nobody said for which', [], null, null],
    ['all here', [here, here], { isAllHere: true, expectedOn: null, daysOver: 0 }, null],
    [
      'the last one counts',
      [soon, later],
      { isAllHere: false, expectedOn: day('2026-12-10'), daysOver: 0 },
      '2026-12-10',
    ],
    [
      'what is here does not',
      [{ ...later, ...here }, soon],
      { isAllHere: false, expectedOn: day('2026-12-03'), daysOver: 0 },
      '2026-12-03',
    ],
    ['one without a day leaves none', [soon, {}], { isAllHere: false, expectedOn: null, daysOver: 0 }, null],
    ['the other way round too', [{}, soon], { isAllHere: false, expectedOn: null, daysOver: 0 }, null],
    [
      'one over its day',
      [over, later],
      { isAllHere: false, expectedOn: day('2026-12-10'), daysOver: 2 },
      '2026-12-10',
    ],
    [
      'a customer is told no day that is past',
      [over],
      { isAllHere: false, expectedOn: day('2026-11-23'), daysOver: 2 },
      null,
    ],
    [
      'the day itself is told',
      [{ expectedOn: today }],
      { isAllHere: false, expectedOn: today, daysOver: 0 },
      '2026-11-25',
    ],
  ])('a job waits: %s', (_name, parts, wait, told) => {
    expect(partsWait(parts.map(part), today)).toEqual(wait);
    expect(comingOn(parts.map(part), today)).toBe(told);
  });
});

describe('with a database', () => {
  let world: Awaited<ReturnType<typeof makeWorkshop>>;
  let partId: string;
  let jobId: string;
  useDatabase();
  beforeEach(async () => {
    await resetDatabase();
    world = await makeWorkshop(now);
    partId = (await db.part.findFirstOrThrow()).id;
    jobId = await assessedJob(world, now);
  }, 30_000);

  const wait = async (parts: WaitedFor[], expectedOn: string | null = null, version?: number) =>
    waitForParts({
      jobId,
      version: version ?? (await versionOf(jobId)),
      parts,
      expectedOn: expectedOn === null ? null : day(expectedOn),
      actor: BENCH,
      now,
    });
  const order = (
    expectedOn: string | null,
    quantity = 10,
    formKey = '0199b3a2-0000-7000-8000-000000000012',
  ) =>
    orderParts({
      pieces: [{ partId, quantity }],
      supplier: 'Gannet Parts',
      orderedOn: today,
      expectedOn: expectedOn === null ? null : day(expectedOn),
      formKey,
      userId: BENCH.id,
      now,
    });
  const waits = async () => awaitedPartsOf(await jobNow(jobId));
  const row = async (at = now) => {
    const { lists } = await readToday(at);
    return [...lists.late, ...lists.onUs][0];
  };

  test('it waits for parts of the list and another, until a day, and its history says for which', async () => {
    const mails = await db.mail.count({ where: { jobId } });
    await wait(
      [
        { partId, quantity: 7 },
        { name: 'Long display', quantity: 1 },
      ],
      '2026-12-03',
    );
    const job = await jobNow(jobId);
    expect(job.stage).toBe('awaiting-parts');
    const event = job.events.at(-1);
    expect(event).toMatchObject({ kind: 'parts-awaited', fromStage: 'assessing', toStage: 'awaiting-parts' });
    expect(eventLine('parts-awaited', event?.data)).toBe('Waits for 7 × USB-C socket, 16 pin, Long display');
    const expectedOn = day('2026-12-03');
    expect(await waits()).toEqual([
      {
        partId,
        name: 'USB-C socket, 16 pin',
        quantity: 7,
        here: 5,
        isOnOrder: false,
        isNeeded: true,
        expectedOn,
      },
      {
        partId: null,
        name: 'Long display',
        quantity: 1,
        here: 0,
        isOnOrder: false,
        isNeeded: true,
        expectedOn,
      },
    ]);
    expect(await row()).toMatchObject({ wait: { step: 'chase-part' }, job: { isPartHere: false } });
    expect(await db.mail.count({ where: { jobId } })).toBe(mails);
  });

  test('the day of an open order of the part goes before the one typed with the job', async () => {
    await wait([{ partId, quantity: 7 }], '2026-12-03');
    await order('2026-12-10');
    expect(await waits()).toMatchObject([{ isOnOrder: true, expectedOn: day('2026-12-10') }]);
    expect(comingOn(await waits(), addDays(today, 20))).toBeNull();
    await endOrder({ orderId: (await db.partOrder.findFirstOrThrow()).id, came: 0, userId: BENCH.id, now });
    expect(await waits()).toMatchObject([{ isOnOrder: false, expectedOn: day('2026-12-03') }]);
  });

  test('an order without a day leaves the one that was typed', async () => {
    await wait([{ partId, quantity: 7 }], '2026-12-03');
    await order(null);
    expect(await waits()).toMatchObject([{ isOnOrder: true, expectedOn: day('2026-12-03') }]);
  });

  test('once every part is in stock, it is for the bench again', async () => {
    await wait([{ partId, quantity: 5 }]);
    expect(await row()).toMatchObject({ wait: { step: 'part-is-here' } });
    await takeMove(jobId, 'parts-in', now);
    expect(await waits()).toEqual([]);
    expect(await row()).toMatchObject({ wait: { step: 'repair' } });
  });

  test('two jobs that wait for one part are told the day of their own piece, and one piece is here for one of them', async () => {
    await db.lot.updateMany({ data: { inStock: 0 } });
    const first = jobId;
    const second = await assessedJob(world, now);
    await db.job.update({ where: { id: first }, data: { promisedOn: dayToDate(day('2026-12-07')) } });
    await db.job.update({ where: { id: second }, data: { promisedOn: dayToDate(day('2026-12-08')) } });
    for (jobId of [second, first]) await wait([{ partId, quantity: 1 }], '2026-12-30');
    const told = async () => {
      const [one, two] = [awaitedPartsOf(await jobNow(first)), awaitedPartsOf(await jobNow(second))];
      return [comingOn(one, today), comingOn(two, today)];
    };
    await order('2026-12-03', 1);
    expect(await told()).toEqual(['2026-12-03', '2026-12-30']);
    expect(awaitedPartsOf(await jobNow(second))).toMatchObject([{ isOnOrder: false }]);
    await order('2026-12-20', 1, '0199b3a2-0000-7000-8000-000000000013');
    expect(await told()).toEqual(['2026-12-03', '2026-12-20']);

    const { id: orderId } = await db.partOrder.findFirstOrThrow({ orderBy: { expectedOn: 'asc' } });
    await addToLot({
      lotId: world.lotId,
      received: (await db.lot.findUniqueOrThrow({ where: { id: world.lotId } })).received,
      quantity: 1,
      unitCostMinor: 100,
      orderId,
      userId: BENCH.id,
      now,
    });
    const steps = async () => {
      const { lists } = await readToday(now);
      return [...lists.late, ...lists.onUs]
        .map(({ wait }) => ('step' in wait ? wait.step : wait.who))
        .toSorted();
    };
    expect(await steps()).toEqual(['chase-part', 'part-is-here']);
    expect(await told()).toEqual([null, '2026-12-20']);
    // On the bench with its piece not taken yet, the first still has it.
    await takeMove(first, 'parts-in', now);
    expect(awaitedPartsOf(await jobNow(second))).toMatchObject([{ here: 0, expectedOn: '2026-12-20' }]);
  });

  test('what a job took before it waits counts for nothing, and what it takes meanwhile is not chased', async () => {
    const take = async (quantity: number, at: Date) =>
      usePartOnJob({
        jobId,
        version: await versionOf(jobId),
        lotId: world.lotId,
        quantity,
        actor: BENCH,
        now: at,
      });
    await take(4, new Date(now.getTime() - 60_000));
    await wait([{ partId, quantity: 2 }]);
    expect(await waits()).toMatchObject([{ quantity: 2, here: 1 }]);
    expect((await readOrderList(now)).rows).toMatchObject([{ needed: 2 }]);
    await take(1, now);
    expect(await waits()).toMatchObject([{ quantity: 1, here: 0 }]);
    await db.lot.updateMany({ data: { inStock: 1 } });
    expect(await row()).toMatchObject({ wait: { step: 'part-is-here' } });
  });

  test('the order list counts what a job waits for until it has taken it', async () => {
    await wait([{ partId, quantity: 7 }]);
    expect((await readOrderList(now)).rows).toMatchObject([{ needed: 7, inStock: 5 }]);
    const waiting = async () => (await readPart(partId))?.waiting;
    const { number } = await jobNow(jobId);
    expect(await waiting()).toMatchObject([{ jobNumber: number, quantity: 7 }]);
    await takeMove(jobId, 'parts-in', now);
    expect(await waiting()).toEqual([]);
    await usePartOnJob({
      jobId,
      version: await versionOf(jobId),
      lotId: world.lotId,
      quantity: 5,
      actor: BENCH,
      now,
    });
    expect((await readOrderList(now)).rows).toMatchObject([{ needed: 2, inStock: 0 }]);
  });

  test('once it is proved, what it waited for and did not take is needed no more', async () => {
    await wait([{ partId, quantity: 7 }]);
    await takeMove(jobId, 'parts-in', now);
    await recordWork({ jobId, text: 'Another socket fitted', minutes: 30, actor: BENCH, now });
    await takeMove(jobId, 'prove', now);
    expect(await db.awaitedPart.count()).toBe(0);
    await takeMove(jobId, 'reopen-work', now);
    expect((await readOrderList(now)).rows).toEqual([]);
  });

  test('what it waits for is said anew without another move', async () => {
    await waitForPart(jobId, now);
    await wait([{ partId, quantity: 7 }], '2026-12-03');
    expect(await waits()).toMatchObject([{ partId, quantity: 7 }]);
    const { events } = await jobNow(jobId);
    expect(events.filter(({ toStage }) => toStage === 'awaiting-parts')).toHaveLength(1);
    expect(events.filter(({ kind }) => kind === 'parts-awaited')).toHaveLength(2);
  });

  test.each<[string, WaitedFor[], string | null, string]>([
    ['nothing', [], null, 'part-1'],
    ['a day that is past', [{ name: 'Long display', quantity: 1 }], '2026-11-24', 'expectedOn'],
    [
      'a part that is no longer on the list',
      [{ partId: '0199b3a2-0000-7000-8000-0000000000ff', quantity: 1 }],
      null,
      'part-1',
    ],
  ])('refused: %s', async (_name, parts, expectedOn, field) => {
    await expect(wait(parts, expectedOn)).rejects.toMatchObject({ field });
    expect((await jobNow(jobId)).stage).toBe('assessing');
    expect(await db.awaitedPart.count()).toBe(0);
  });

  test('one part twice, and a job that changed meanwhile, are refused', async () => {
    const twice = [
      { partId, quantity: 1 },
      { partId, quantity: 2 },
    ];
    await expect(wait(twice)).rejects.toMatchObject({ code: 'invalid', field: 'part-2' });
    const version = await versionOf(jobId);
    await waitForPart(jobId, now);
    await expect(wait([{ partId, quantity: 1 }], null, version)).rejects.toMatchObject({ code: 'conflict' });
  });

  test('nothing waits from a stage that may not', async () => {
    await takeMove(jobId, 'start-bench', now);
    await db.job.update({ where: { id: jobId }, data: { stage: 'proving' } });
    await expect(waitForPart(jobId, now)).rejects.toMatchObject({ code: 'conflict' });
  });
});
