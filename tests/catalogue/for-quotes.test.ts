import { beforeEach, expect, test } from 'vitest';
import { repairsForQuote, taxRatesInUse } from '@/lib/catalogue/staff-records';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { DEMO_REPAIRS, loadCatalogue } from '@/prisma/demo/catalogue';
import { demoId } from '@/prisma/demo/demo-id';
import { useDatabase } from '@/tests/database';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');
const gull = demoId('model', 'gull');
const gullUsb = demoId('repair', 'gull/usb-socket');

useDatabase();
beforeEach(
  madeOnce(() => transaction((tx) => loadCatalogue(tx, now))),
  30_000,
);

test('a quote may be built on any repair, listed or not, and the model’s own come first', async () => {
  await db.repair.update({ where: { id: gullUsb }, data: { isListed: false } });
  const found = await repairsForQuote(gull);
  const own = DEMO_REPAIRS.filter((repair) => repair.modelId === gull);
  expect(found).toHaveLength(DEMO_REPAIRS.length);
  expect(new Set(found.slice(0, own.length).map((row) => row.id))).toEqual(new Set(own.map((row) => row.id)));
  expect(found.find((row) => row.id === gullUsb)).toMatchObject({
    taxCategory: 'S',
    taxRateBps: 2000,
    policyName: 'Connector work',
  });
});

test('without a model they stand by model and name', async () => {
  const names = (await repairsForQuote(null)).map((row) => `${row.modelName}, ${row.name}`);
  expect(names).toHaveLength(DEMO_REPAIRS.length);
  expect(new Set(names).size).toBe(names.length);
});

test('each tax in use is named once, the highest rate first', async () => {
  await db.repair.update({ where: { id: gullUsb }, data: { taxCategory: 'E', taxRateBps: 0 } });
  expect(await taxRatesInUse()).toEqual([
    { category: 'S', rateBps: 2000 },
    { category: 'E', rateBps: 0 },
  ]);
});
