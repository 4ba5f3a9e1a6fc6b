import { beforeEach, expect, it } from 'vitest';
import { importList, tryImport } from '@/lib/catalogue/import-list';
import { exportCatalogue } from '@/lib/catalogue/list-records';
import { saveRepair } from '@/lib/catalogue/save-repair';
import { db } from '@/lib/db/client';
import { attempt, type Outcome } from '@/lib/outcome';
import { resetDatabase, useDatabase } from '@/tests/database';
import { shownNow } from '@/tests/makers/shown';
import { makeWorkshop, OWNER } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');
const by = { now, userId: OWNER.id };

useDatabase();
beforeEach(resetDatabase);

const codes = (outcomes: readonly Outcome<unknown>[]) =>
  outcomes.map((outcome) => (outcome.ok ? 'done' : outcome.refusal.code)).sort();

async function fileWithPrice(price: string) {
  const text = (await exportCatalogue()).replace(',72.00,', `,${price},`);
  const { mark } = await tryImport(text);
  return { text, mark, by };
}

it('of two owners who import at once one does and the other is told that the catalogue changed', async () => {
  const { repairId } = await makeWorkshop(now);
  const files = [await fileWithPrice('80.00'), await fileWithPrice('81.00'), await fileWithPrice('82.00')];
  const outcomes = await Promise.all(files.map((file) => attempt(() => importList(file))));
  expect(codes(outcomes)).toEqual(['conflict', 'conflict', 'done']);
  const repair = await db.repair.findUniqueOrThrow({ where: { id: repairId } });
  const prices = await db.repairPrice.findMany();
  expect(prices.map((price) => price.priceMinor)).toEqual([repair.priceMinor]);
});

it('the same new list imported by two at once is there once', async () => {
  await makeWorkshop(now);
  const text = (await exportCatalogue())
    .replace(',tideline-hw2,Tideline,HW-2,', ',,Tideline,HW-3,')
    .replace(',usb-socket,', ',,');
  const { mark } = await tryImport(text);
  const outcomes = await Promise.all([1, 2].map(() => attempt(() => importList({ text, mark, by }))));
  expect(codes(outcomes)).toEqual(['conflict', 'done']);
  expect(await db.model.count()).toBe(2);
  expect(await db.repair.count()).toBe(2);
});

it('of an import and prices saved by hand from one page one wins, and the history holds that price', async () => {
  const { repairId } = await makeWorkshop(now);
  const { id: _, slug: __, ...repair } = await db.repair.findUniqueOrThrow({ where: { id: repairId } });
  const file = await fileWithPrice('80.00');
  const shown = await shownNow('repair', repairId);
  const hands = [7300, 7400, 7500].map((priceMinor) =>
    attempt(() =>
      saveRepair(shown, { ...repair, priceKind: 'GBP with tax', taxCategory: 'S', priceMinor }, by),
    ),
  );
  const outcomes = await Promise.all([attempt(() => importList(file)), ...hands]);
  expect(codes(outcomes)).toEqual(['conflict', 'conflict', 'conflict', 'done']);
  const prices = await db.repairPrice.findMany();
  const after = await db.repair.findUniqueOrThrow({ where: { id: repairId } });
  expect(prices.map((price) => price.priceMinor)).toEqual([after.priceMinor]);
});
