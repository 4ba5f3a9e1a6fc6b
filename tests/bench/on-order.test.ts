import { beforeEach, describe, expect, test } from 'vitest';
import { addLot } from '@/lib/bench/add-lot';
import { addToLot } from '@/lib/bench/add-to-lot';
import { endOrder, expectOrder } from '@/lib/bench/change-order';
import { orderParts } from '@/lib/bench/order-parts';
import { readOrderList } from '@/lib/bench/order-records';
import { listParts, readLot, readPart } from '@/lib/bench/part-records';
import {
  afterComing,
  daysOver,
  expectedWords,
  inOrderOfDay,
  movedWords,
  piecesOnOrder,
  stillToCome,
} from '@/lib/bench/rules/on-order';
import { orderList } from '@/lib/bench/rules/order-list';
import { readOpenOrders } from '@/lib/bench/stored-orders';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { resetDatabase, useDatabase } from '@/tests/database';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');
const today = day('2026-11-25');

describe('the rules', () => {
  test.each([
    { name: 'no day was said', expectedOn: null, over: 0, words: 'no day known' },
    { name: 'still to come', expectedOn: '2026-11-26', over: 0, words: 'expected 26 Nov 2026' },
    { name: 'the day itself', expectedOn: '2026-11-25', over: 0, words: 'expected 25 Nov 2026' },
    { name: 'yesterday', expectedOn: '2026-11-24', over: 1, words: 'expected 24 Nov 2026, 1 day over' },
    { name: 'last week', expectedOn: '2026-11-18', over: 7, words: 'expected 18 Nov 2026, 7 days over' },
  ])('expected: $name', ({ expectedOn, over, words }) => {
    const on = expectedOn === null ? null : day(expectedOn);
    expect(daysOver(on, today)).toBe(over);
    expect(expectedWords(on, { today, locale: 'en-GB' })).toBe(words);
  });

  test.each([
    { name: 'later', from: '2026-12-03', to: '2026-12-10', words: 'from 3 Dec 2026 to 10 Dec 2026' },
    { name: 'first said', from: null, to: '2026-12-10', words: 'from no day to 10 Dec 2026' },
    { name: 'known no more', from: '2026-12-03', to: null, words: 'from 3 Dec 2026 to no day' },
  ])('moved: $name', ({ from, to, words }) => {
    const on = (text: string | null) => (text === null ? null : day(text));
    expect(movedWords({ from: on(from), to: on(to) }, 'en-GB')).toBe(words);
  });

  test.each([
    { name: 'some of it', came: 0, pieces: 4, after: { came: 4, isDone: false } },
    { name: 'the rest', came: 4, pieces: 6, after: { came: 10, isDone: true } },
    { name: 'more than was ordered', came: 0, pieces: 12, after: { came: 12, isDone: true } },
  ])('of ten ordered comes $name', ({ came, pieces, after }) => {
    expect(afterComing({ quantity: 10, came }, pieces)).toEqual(after);
  });

  test('what is still to come is counted by part, and never below nothing', () => {
    expect(stillToCome({ quantity: 10, came: 12 })).toBe(0);
    const order = { quantity: 10, came: 4, expectedOn: null };
    const orders = [
      { ...order, partId: 'p' },
      { ...order, partId: 'p', came: 0 },
      { ...order, partId: 'q', came: 12 },
    ];
    expect([...piecesOnOrder(orders)]).toEqual([
      ['p', 16],
      ['q', 0],
    ]);
  });

  test('the first to come stands first, and what has no day last', () => {
    const days = [null, day('2026-12-03'), day('2026-11-20')];
    expect(inOrderOfDay(days.map((expectedOn) => ({ expectedOn }))).map((each) => each.expectedOn)).toEqual([
      day('2026-11-20'),
      day('2026-12-03'),
      null,
    ]);
  });

  test.each([
    { ordered: 0, order: 6 },
    { ordered: 5, order: 1 },
    { ordered: 6, order: null },
  ])('with $ordered on order the list asks for $order', ({ ordered, order }) => {
    const part = { id: 'p', code: 'USB', name: 'Socket', inStock: 5, reorderAt: 3 };
    const [row] = orderList([part], new Map([['p', 7]]), new Map([['p', ordered]]));
    expect(row?.order ?? null).toBe(order);
    if (row) expect(row.onOrder).toBe(ordered);
  });
});

describe('with a database', () => {
  let partId: string;
  useDatabase();
  beforeEach(async () => {
    await resetDatabase();
    await makeWorkshop(now);
    partId = (await db.part.findFirstOrThrow()).id;
    await db.part.update({ where: { id: partId }, data: { reorderAt: 8 } });
  }, 30_000);

  const formKey = '0199b3a2-0000-7000-8000-000000000011';
  const order = (over: Partial<Parameters<typeof orderParts>[0]> = {}) =>
    orderParts({
      pieces: [{ partId, quantity: 10 }],
      supplier: 'Gannet Parts',
      orderedOn: today,
      expectedOn: day('2026-12-03'),
      formKey,
      userId: BENCH.id,
      now,
      ...over,
    });
  const idOfOrder = async () => (await db.partOrder.findFirstOrThrow()).id;
  const lot = (received: number) => ({
    partId,
    code: `L-${received}`,
    supplier: 'Gannet Parts',
    receivedOn: today,
    received,
    unitCostMinor: 200,
  });
  const of = async () => ({ orderId: await idOfOrder(), userId: OWNER.id, now });

  test('what is ordered is asked for no more, and sent twice it is ordered once', async () => {
    expect((await readOrderList(now)).rows).toMatchObject([{ inStock: 5, order: 4 }]);
    await order();
    await order();
    expect(await readOpenOrders()).toMatchObject([
      {
        partId,
        part: 'USB-C socket, 16 pin',
        quantity: 10,
        came: 0,
        supplier: 'Gannet Parts',
        userId: BENCH.id,
      },
    ]);
    const { rows, orders } = await readOrderList(now);
    expect(rows).toEqual([]);
    expect(orders).toMatchObject([{ orderedOn: today, expectedOn: day('2026-12-03') }]);
    expect(await listParts()).toMatchObject([{ inStock: 5, onOrder: 10, isLow: false }]);
  });

  test('several parts go in one order', async () => {
    const second = await db.part.create({ data: { code: 'KNOB', name: 'Knob', reorderAt: 2 } });
    await order({
      pieces: [
        { partId, quantity: 4 },
        { partId: second.id, quantity: 20 },
      ],
      expectedOn: null,
    });
    expect(
      (await readOpenOrders([second.id])).map(({ quantity, expectedOn }) => [quantity, expectedOn]),
    ).toEqual([[20, null]]);
    expect(await readOpenOrders()).toHaveLength(2);
  });

  test.each([
    { name: 'nothing', over: { pieces: [] }, field: 'ordered' },
    { name: 'ordered tomorrow', over: { orderedOn: day('2026-11-26') }, field: 'orderedOn' },
    { name: 'expected before it was ordered', over: { expectedOn: day('2026-11-24') }, field: 'expectedOn' },
  ])('refused: $name', async ({ over, field }) => {
    await expect(order(over)).rejects.toMatchObject({ code: 'invalid', field });
    expect(await db.partOrder.count()).toBe(0);
  });

  test('a part that is no longer on the list leaves the whole order unwritten', async () => {
    const gone = { partId: '0199b3a2-0000-7000-8000-0000000000ff', quantity: 1 };
    await expect(order({ pieces: [{ partId, quantity: 1 }, gone] })).rejects.toMatchObject({
      code: 'not-found',
    });
    expect(await db.partOrder.count()).toBe(0);
  });

  test('a delivery counts to its order, which ends once all of it came', async () => {
    await order();
    await addLot(lot(4), await of());
    expect(await readOpenOrders()).toMatchObject([{ quantity: 10, came: 4 }]);
    expect((await readPart(partId))?.orders).toHaveLength(1);
    const { id: lotId } = await db.lot.findFirstOrThrow({ where: { code: 'L-4' } });
    expect((await readLot(lotId, today))?.orders).toHaveLength(1);
    await addToLot({
      lotId,
      received: 4,
      quantity: 6,
      unitCostMinor: 200,
      orderId: await idOfOrder(),
      userId: OWNER.id,
      now,
    });
    expect(await readOpenOrders()).toEqual([]);
    expect(await db.partOrder.findFirst()).toMatchObject({ came: 10, endedAt: now, endedById: OWNER.id });
    expect((await readOrderList(now)).rows).toEqual([]);
  });

  test('pieces added to a lot end no order unless it is said that they came of it', async () => {
    await order();
    const { id: lotId, received } = await db.lot.findFirstOrThrow();
    const found = { lotId, received, quantity: 3, unitCostMinor: 200, userId: OWNER.id, now };
    await expect(addToLot(found)).rejects.toMatchObject({ code: 'invalid', field: 'order' });
    expect(await db.lot.findFirst()).toMatchObject({ received });
    await addToLot({ ...found, orderId: null });
    expect(await db.lot.findFirst()).toMatchObject({ received: received + 3 });
    expect(await readOpenOrders()).toMatchObject([{ quantity: 10, came: 0 }]);
  });

  test('a delivery of an order that was ended, or of another part, books nothing in', async () => {
    await order();
    const other = await db.part.create({ data: { code: 'KNOB', name: 'Knob' } });
    await expect(addLot({ ...lot(3), partId: other.id }, await of())).rejects.toMatchObject({
      code: 'conflict',
    });
    await endOrder({ orderId: await idOfOrder(), came: 0, userId: BENCH.id, now });
    await expect(addLot(lot(3), await of())).rejects.toMatchObject({ code: 'conflict', field: 'order' });
    expect(await db.lot.count()).toBe(1);
    expect(await db.partOrder.findFirst()).toMatchObject({ came: 0 });
  });

  test('of an order that is ended the list asks for the pieces again', async () => {
    await order();
    await endOrder({ orderId: await idOfOrder(), came: 0, userId: BENCH.id, now });
    expect((await readOrderList(now)).rows).toMatchObject([{ order: 4, onOrder: 0 }]);
    await expect(
      endOrder({ orderId: await idOfOrder(), came: 0, userId: BENCH.id, now }),
    ).rejects.toMatchObject({
      code: 'conflict',
    });
  });

  test('who did not see the pieces that came ends nothing', async () => {
    await order();
    await addLot(lot(4), await of());
    await expect(
      endOrder({ orderId: await idOfOrder(), came: 0, userId: BENCH.id, now }),
    ).rejects.toMatchObject({
      code: 'conflict',
    });
    expect(await readOpenOrders()).toHaveLength(1);
  });

  test('another day is kept with who said it and when, but none before it was ordered', async () => {
    await order();
    const orderId = await idOfOrder();
    const later = new Date('2026-11-27T10:00:00Z');
    const move = (expectedOn: string | null, userId = BENCH.id, at = now) =>
      expectOrder({ orderId, expectedOn: expectedOn === null ? null : day(expectedOn), userId, now: at });
    await move('2026-12-10');
    expect(await readOpenOrders()).toMatchObject([{ expectedOn: day('2026-12-10') }]);
    await expect(move('2026-11-24')).rejects.toMatchObject({ code: 'invalid', field: 'expectedOn' });
    // The same day once more is no move.
    await move('2026-12-10', OWNER.id, later);
    await move(null, OWNER.id, later);
    expect(await readOpenOrders()).toMatchObject([
      {
        expectedOn: null,
        moves: [
          { from: day('2026-12-03'), to: day('2026-12-10'), userId: BENCH.id, at: now },
          { from: day('2026-12-10'), to: null, userId: OWNER.id, at: later },
        ],
      },
    ]);
    expect((await readPart(partId))?.orders[0]?.moves).toHaveLength(2);
    await endOrder({ orderId, came: 0, userId: BENCH.id, now });
    await expect(move(null)).rejects.toMatchObject({ code: 'conflict' });
    expect(await db.partOrderMove.count()).toBe(2);
  });
});
