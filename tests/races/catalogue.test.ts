import { beforeEach, expect, it } from 'vitest';
import { exportChecks } from '@/lib/catalogue/check-file-records';
import { importFile, tryImport } from '@/lib/catalogue/import-file';
import { exportCatalogue } from '@/lib/catalogue/list-records';
import { exportPolicies, readKnownPolicies } from '@/lib/catalogue/policy-file-records';
import { FIRST_CHECK } from '@/lib/catalogue/rules/first-check';
import { adding } from '@/lib/catalogue/rules/sheet-changes';
import { saveCheckSheet } from '@/lib/catalogue/save-check-sheet';
import { savePolicyVersion } from '@/lib/catalogue/save-policy-version';
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
  const outcomes = await Promise.all(files.map((file) => attempt(() => importFile(file))));
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
  const outcomes = await Promise.all([1, 2].map(() => attempt(() => importFile({ text, mark, by }))));
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
  const outcomes = await Promise.all([attempt(() => importFile(file)), ...hands]);
  expect(codes(outcomes)).toEqual(['conflict', 'conflict', 'conflict', 'done']);
  const prices = await db.repairPrice.findMany();
  const after = await db.repair.findUniqueOrThrow({ where: { id: repairId } });
  expect(prices.map((price) => price.priceMinor)).toEqual([after.priceMinor]);
});

const sheetsOf = (repairId: string) =>
  db.checkSheet.findMany({
    where: { repairId },
    orderBy: { version: 'asc' },
    select: { version: true, checks: { select: { label: true } } },
  });

it('of an import of check sheets and changes made by hand from one version one wins, and writes the next', async () => {
  const { repairId } = await makeWorkshop(now);
  const before = await sheetsOf(repairId);
  const basedOn = before.at(-1)?.version ?? 0;
  const label = before.at(-1)?.checks[0]?.label ?? '';
  const text = (await exportChecks()).replace(label, 'By file');
  const { mark } = await tryImport(text);
  const hands = ['One', 'Two', 'Three'].map((more) =>
    attempt(() =>
      saveCheckSheet({ repairId, basedOn, change: adding({ ...FIRST_CHECK, label: more }), now }),
    ),
  );
  const outcomes = await Promise.all([attempt(() => importFile({ text, mark, by })), ...hands]);
  expect(codes(outcomes)).toEqual(['conflict', 'conflict', 'conflict', 'done']);
  expect((await sheetsOf(repairId)).map(({ version }) => version)).toEqual([
    ...before.map(({ version }) => version),
    basedOn + 1,
  ]);
});

it('of an import of policies and terms saved by hand from one page one wins, and writes the next version', async () => {
  await makeWorkshop(now);
  const [policy] = await readKnownPolicies();
  if (!policy) throw new Error('the workshop has a policy');
  const { id, version, data } = policy;
  const text = (await exportPolicies()).replace(/,(yes|no),(\d+),/, ',$1,33,');
  const { mark } = await tryImport(text);
  const shown = await shownNow('policy', id);
  const hands = [34, 35, 36].map((graceDays) =>
    attempt(() => savePolicyVersion({ shown, name: data.name, terms: { ...data.terms, graceDays }, now })),
  );
  const outcomes = await Promise.all([attempt(() => importFile({ text, mark, by })), ...hands]);
  expect(codes(outcomes)).toEqual(['conflict', 'conflict', 'conflict', 'done']);
  const versions = await db.policyVersion.findMany({ where: { policyId: id }, orderBy: { version: 'asc' } });
  expect(versions.map((each) => each.version)).toEqual(Array.from({ length: version + 1 }, (_, i) => i + 1));
});
