import { beforeEach, describe, expect, test } from 'vitest';
import { addLot } from '@/lib/bench/add-lot';
import { readOrderList } from '@/lib/bench/order-records';
import { readLot } from '@/lib/bench/part-records';
import { putBackPart } from '@/lib/bench/put-back-part';
import { recallUnits } from '@/lib/bench/recall-records';
import { putBackStages } from '@/lib/bench/rules/put-back';
import { usePartOnJob } from '@/lib/bench/use-part-on-job';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { recordPayment } from '@/lib/jobs/record-payment';
import { eventLine } from '@/lib/jobs/rules/events';
import type { Stage } from '@/lib/jobs/rules/stages';
import { useDatabase } from '@/tests/database';
import { assessedJob, proved, sendBack, takeMove, versionOf } from '@/tests/makers/course';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');

describe('where a part may be put back', () => {
  const may = (stage: Stage, isRepaired: boolean) => putBackStages(isRepaired).includes(stage);

  test.each<{ name: string; stage: Stage; isRepaired: boolean; is: boolean }>([
    { name: 'while it is assessed', stage: 'assessing', isRepaired: false, is: true },
    { name: 'while a price is asked', stage: 'awaiting-approval', isRepaired: false, is: true },
    { name: 'at the bench', stage: 'on-bench', isRepaired: false, is: true },
    { name: 'back at the bench after a failed check', stage: 'on-bench', isRepaired: false, is: true },
    { name: 'while it is proved', stage: 'proving', isRepaired: false, is: false },
    { name: 'once it was proved', stage: 'ready', isRepaired: true, is: false },
    { name: 'turned down', stage: 'declined', isRepaired: false, is: true },
    { name: 'packed unrepaired', stage: 'ready', isRepaired: false, is: true },
    { name: 'withdrawn while proved, packed', stage: 'ready', isRepaired: false, is: true },
    { name: 'a claim that is returned without repair', stage: 'ready', isRepaired: false, is: true },
    { name: 'sent back', stage: 'sent-back', isRepaired: false, is: false },
    { name: 'closed', stage: 'closed', isRepaired: false, is: false },
    { name: 'before it is here', stage: 'booked', isRepaired: false, is: false },
  ])('$name: $is', ({ stage, isRepaired, is }) => expect(may(stage, isRepaired)).toBe(is));
});

describe('with a database', () => {
  useDatabase();
  const atBench = madeOnce(async () => {
    const world = await makeWorkshop(now);
    const jobId = await assessedJob(world, now);
    return { world, jobId };
  });
  let world: Awaited<ReturnType<typeof makeWorkshop>>;
  let jobId = '';
  beforeEach(async () => {
    ({ world, jobId } = await atBench());
  }, 60_000);

  const take = async (lotId: string, quantity = 1) => {
    await usePartOnJob({ jobId, version: await versionOf(jobId), lotId, quantity, actor: BENCH, now });
    return (await jobNow(jobId)).partUses.at(-1)?.id ?? '';
  };
  const putBack = async (partUseId: string, of = jobId) =>
    putBackPart({ jobId: of, version: await versionOf(of), partUseId, actor: BENCH, now });
  const stock = async (id = world.lotId) => (await db.lot.findUniqueOrThrow({ where: { id } })).inStock;

  test('stock has it again, the history says so, and nothing else knows of it', async () => {
    const { partId } = await db.lot.findUniqueOrThrow({ where: { id: world.lotId } });
    await db.repairPart.create({ data: { repairId: world.repairId, partId, quantity: 5 } });
    const needed = async () => (await readOrderList(now)).rows.find((row) => row.id === partId)?.needed;
    const before = await needed();
    const id = await take(world.lotId, 2);
    expect(await stock()).toBe(3);
    expect(await needed()).not.toBe(before);

    await putBack(id);

    expect(await stock()).toBe(5);
    expect(await needed()).toBe(before);
    expect(await recallUnits(world.lotId)).toEqual([]);
    expect((await readLot(world.lotId, day('2026-11-25')))?.units).toEqual([]);
    const job = await jobNow(jobId);
    expect(job.partUses).toEqual([]);
    const [taken, back] = job.events.slice(-2).map((event) => eventLine(event.kind, event.data));
    expect(taken).toBe('Part used: 2 × USB-C socket, 16 pin, lot L-2611');
    expect(back).toBe('Part put back: 2 × USB-C socket, 16 pin, lot L-2611');
  });

  test('a certificate covers the lot that was taken instead, and no other', async () => {
    const { partId } = await db.lot.findUniqueOrThrow({ where: { id: world.lotId } });
    const right = await addLot({
      partId,
      code: 'L-2612',
      supplier: 'Nesbrook Parts',
      receivedOn: day('2026-11-20'),
      received: 3,
      unitCostMinor: 210,
    });
    await takeMove(jobId, 'start-bench', now);
    const wrong = await take(world.lotId);
    await putBack(wrong);
    await take(right);
    await proved(world, jobId, now);
    const paid = { amount: 7200, method: 'card', reference: '', receivedOn: day('2026-11-25') } as const;
    await recordPayment({ jobId, ...paid, actor: BENCH, now });
    await sendBack(jobId, now);
    const lines = await db.certificateLine.findMany({ where: { kind: 'part' }, select: { lotId: true } });
    expect(lines).toEqual([{ lotId: right }]);
    expect([await stock(), await stock(right)]).toEqual([5, 2]);
    await expect(putBack((await jobNow(jobId)).partUses[0]?.id ?? '')).rejects.toMatchObject({
      code: 'conflict',
    });
    expect([await stock(), await stock(right)]).toEqual([5, 2]);
  });

  test('what was proved keeps its parts', async () => {
    await takeMove(jobId, 'start-bench', now);
    const id = await take(world.lotId);
    await proved(world, jobId, now);
    await expect(putBack(id)).rejects.toMatchObject({ code: 'conflict' });
    expect((await jobNow(jobId)).partUses).toHaveLength(1);
    expect(await stock()).toBe(4);
  });

  test('a second press, an old page and another job put nothing back', async () => {
    const [one, two] = [await take(world.lotId), await take(world.lotId)];
    const seen = await versionOf(jobId);
    await putBack(one);
    await expect(putBack(one)).rejects.toMatchObject({ code: 'conflict' });
    const old = { jobId, version: seen, partUseId: two, actor: BENCH, now };
    await expect(putBackPart(old)).rejects.toMatchObject({ code: 'conflict' });
    const other = await assessedJob(world, now);
    await expect(putBack(two, other)).rejects.toMatchObject({ code: 'conflict' });
    expect(await stock()).toBe(4);
    expect((await jobNow(jobId)).partUses).toMatchObject([{ id: two }]);
  });
});
