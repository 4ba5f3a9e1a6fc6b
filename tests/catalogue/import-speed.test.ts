import { performance } from 'node:perf_hooks';
import { beforeAll, describe, expect, test } from 'vitest';
import { writeCsv } from '@/lib/catalogue/csv';
import { importFile } from '@/lib/catalogue/import-file';
import { exportCatalogue } from '@/lib/catalogue/list-records';
import { listLayout } from '@/lib/catalogue/rules/list-columns';
import type { KnownCatalogue } from '@/lib/catalogue/rules/list-data';
import { listRows } from '@/lib/catalogue/rules/list-data';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { loadCatalogue } from '@/prisma/demo/catalogue';
import { resetDatabase, useDatabase } from '@/tests/database';
import { tryCatalogue } from '@/tests/makers/catalogue-file';

const now = new Date('2026-11-25T09:00:00Z');
const by = { now, userId: null };
const settings = { currency: 'GBP', pricesIncludeTax: true };
const MODELS = 500;
const REPAIRS_EACH = 10;

/** An invented list of 500 models with ten repairs each, at a price of so many pence more. */
function bigList(more: number): string {
  const models = Array.from({ length: MODELS }, (_, i) => i);
  const known: KnownCatalogue = {
    families: [{ id: '', slug: 'mixers', data: { name: 'Mixers', position: 9 } }],
    models: models.map((i) => ({
      id: '',
      slug: `ostrel-mx-${i}`,
      familySlug: 'mixers',
      data: {
        maker: 'Ostrel',
        name: `MX-${i}`,
        aliases: [`Mixer ${i}`],
        accessories: ['Wall adapter', 'USB cable'],
        weightGrams: 900 + i,
        lengthMm: 300,
        widthMm: 200,
        heightMm: 60,
        tariffNumber: '',
        serialPlace: 'On the label underneath',
        serialExample: `MX${i}-00042`,
        serialPattern: 'MX\\d{6}',
        serialRule: 'none',
        battery: 'none',
        batteryWh: null,
        isMainsPowered: false,
        isListed: true,
      },
    })),
    repairs: models.flatMap((i) =>
      Array.from({ length: REPAIRS_EACH }, (_, j) => ({
        id: '',
        slug: `repair-${j}`,
        modelSlug: `ostrel-mx-${i}`,
        data: {
          name: `Fader ${j} replaced`,
          summary: 'Old fader out, track cleaned, new fader soldered and set to even strength.',
          priceMinor: 4000 + 100 * j + more,
          taxCategory: 'S',
          taxRateBps: 2000,
          minutes: 40,
          workingDays: 5,
          symptoms: ['It crackles when moved', 'One side is silent', 'The fader sticks'],
          policy: 'Connector work',
          parts: [{ code: 'POT-10K', quantity: 1 }],
          isListed: true,
        },
      })),
    ),
  };
  return writeCsv(listRows(known, settings), listLayout(settings));
}

async function timed(text: string) {
  const started = performance.now();
  const run = await tryCatalogue(text);
  const looked = performance.now();
  await importFile({ text, mark: run.mark, by });
  const seconds = { look: (looked - started) / 1000, import: (performance.now() - looked) / 1000 };
  return { ...run, seconds };
}

useDatabase();
beforeAll(async () => {
  await resetDatabase();
  await transaction((tx) => loadCatalogue(tx, now));
}, 60_000);

// The bound is the product's own: 5,000 rows in under ten seconds, here for the dry run and for the import each.
describe(`a list of ${MODELS * REPAIRS_EACH} rows`, () => {
  test('is looked at and added in under ten seconds', async () => {
    const { plan, seconds } = await timed(bigList(0));
    expect(plan.problems).toEqual([]);
    expect(plan.repairs).toHaveLength(MODELS * REPAIRS_EACH);
    expect(await db.repair.count({ where: { model: { family: { slug: 'mixers' } } } })).toBe(
      MODELS * REPAIRS_EACH,
    );
    process.stdout.write(
      `5,000 new rows: look ${seconds.look.toFixed(1)} s, import ${seconds.import.toFixed(1)} s\n`,
    );
    expect(seconds.look).toBeLessThan(10);
    expect(seconds.import).toBeLessThan(10);
  }, 120_000);

  test('has every price changed in under ten seconds, and comes back as it went in', async () => {
    const { plan, seconds } = await timed(bigList(250));
    expect(plan.repairs).toHaveLength(MODELS * REPAIRS_EACH);
    expect(plan.unchanged).toMatchObject({ families: 1, models: MODELS });
    expect(await db.repair.count({ where: { slug: 'repair-3', priceMinor: 4550 } })).toBe(MODELS);
    process.stdout.write(
      `5,000 changed rows: look ${seconds.look.toFixed(1)} s, import ${seconds.import.toFixed(1)} s\n`,
    );
    expect(seconds.look).toBeLessThan(10);
    expect(seconds.import).toBeLessThan(10);
    const again = await tryCatalogue(await exportCatalogue());
    expect([...again.plan.problems, ...again.plan.repairs, ...again.plan.models]).toEqual([]);
  }, 120_000);

  test('full of faults is told every one of them', async () => {
    const text = bigList(0).replaceAll(',GBP,', ',EUR,').replaceAll(',POT-10K,', ',POT-9K,');
    const { plan } = await tryCatalogue(text);
    expect(plan.problems).toHaveLength(2 * MODELS * REPAIRS_EACH);
    expect(plan.problems.at(-1)).toMatchObject({ row: MODELS * REPAIRS_EACH + 1, column: 'parts' });
  }, 120_000);
});
