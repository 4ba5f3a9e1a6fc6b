import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readCsv, writeCsv } from '@/lib/catalogue/csv';
import { listLayout } from '@/lib/catalogue/rules/list-columns';
import {
  type KnownCatalogue,
  listRows,
  type ModelData,
  type RepairData,
} from '@/lib/catalogue/rules/list-data';
import { planImport } from '@/lib/catalogue/rules/plan-import';

const settings = { currency: 'GBP', pricesIncludeTax: true };
const layout = listLayout(settings);
const referred = {
  policies: ['Connector work', 'connector work', '=Odd; policy', "'s work"],
  parts: ['A-1', 'DIN-5', 'SW x2', 'a-1', 'semi;colon'],
};

// What a form can keep: trimmed, on one line where the form has one line, with whatever signs people paste.
const signs = fc.constantFrom(...'ab1 ;,"\'\\=+-@\t\rxé×', '＝', '😀');
const trimmed = (least: number, unit = signs) =>
  fc
    .string({ unit, minLength: least, maxLength: 14 })
    .map((text) => text.trim())
    .filter((text) => text.length >= least);
const line = trimmed(1);
const entries = (least: number) => fc.uniqueArray(line, { minLength: least, maxLength: 4 });
const summary = trimmed(
  1,
  fc.oneof(
    signs.filter((sign) => sign !== '\r'),
    fc.constant('\n'),
  ),
);

const model: fc.Arbitrary<ModelData> = fc
  .record({
    maker: line,
    name: line,
    aliases: entries(0),
    accessories: entries(0),
    weightGrams: fc.nat(100_000),
    size: fc.option(fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 3, maxLength: 3 })),
    tariffNumber: fc.constantFrom('', '851981'),
    serialPlace: trimmed(0),
    serialExample: trimmed(0),
    serialPattern: fc.constantFrom(null, 'G\\d{6}', '[A-Z]{2};\\d{4}', '-\\d+'),
    serialRule: fc.constantFrom('none' as const, 'luhn' as const, 'mod-37-2' as const),
    wh: fc.option(fc.constantFrom(3.7, 9.25, 99.9999, 1200)),
    isMainsPowered: fc.boolean(),
    isListed: fc.boolean(),
  })
  .map(({ size, wh, ...data }) => ({
    ...data,
    lengthMm: size?.[0] ?? 0,
    widthMm: size?.[1] ?? 0,
    heightMm: size?.[2] ?? 0,
    battery: wh === null ? ('button-cell' as const) : ('lithium-ion' as const),
    batteryWh: wh,
  }));

const repair: fc.Arbitrary<RepairData> = fc
  .record({
    name: line,
    summary,
    priceMinor: fc.nat(2_000_000_000),
    rate: fc.option(fc.integer({ min: 1, max: 9999 })),
    minutes: fc.integer({ min: 1, max: 6000 }),
    workingDays: fc.integer({ min: 1, max: 250 }),
    symptoms: entries(1),
    policy: fc.constantFrom(...referred.policies),
    parts: fc.uniqueArray(
      fc.record({ code: fc.constantFrom(...referred.parts), quantity: fc.integer({ min: 1, max: 500 }) }),
      { selector: (part) => part.code },
    ),
    isListed: fc.boolean(),
  })
  .map(({ rate, parts, ...data }) => ({
    ...data,
    taxCategory: rate === null ? ('E' as const) : ('S' as const),
    taxRateBps: rate ?? 0,
    parts: parts.sort((a, b) => (a.code < b.code ? -1 : 1)),
  }));

const catalogue: fc.Arbitrary<KnownCatalogue> = fc
  .array(
    fc.record({
      name: line,
      position: fc.nat(999),
      models: fc.array(fc.record({ data: model, repairs: fc.array(repair, { maxLength: 3 }) }), {
        maxLength: 3,
      }),
    }),
    { maxLength: 3 },
  )
  .map((families) => ({
    families: families.map(({ name, position }, i) => ({
      id: `f${i}`,
      slug: `family-${i}`,
      data: { name, position },
    })),
    models: families.flatMap((family, i) =>
      family.models.map(({ data }, j) => ({
        id: `m${i}-${j}`,
        slug: `model-${i}-${j}`,
        familySlug: `family-${i}`,
        data,
      })),
    ),
    repairs: families.flatMap((family, i) =>
      family.models.flatMap(({ repairs }, j) =>
        repairs.map((data, k) => ({
          id: `r${i}-${j}-${k}`,
          slug: `repair-${k}`,
          modelSlug: `model-${i}-${j}`,
          data,
        })),
      ),
    ),
  }));

test('whatever the forms can keep goes out and comes back without a change or a fault', () => {
  fc.assert(
    fc.property(catalogue, (known) => {
      const { rows, problems } = readCsv(writeCsv(listRows(known, settings), layout), layout);
      expect(problems).toEqual([]);
      expect(planImport({ rows, known, referred, settings })).toEqual({
        families: [],
        models: [],
        repairs: [],
        unchanged: {
          families: known.families.length,
          models: known.models.length,
          repairs: known.repairs.length,
        },
        problems: [],
      });
    }),
    { numRuns: 300 },
  );
});

test('and makes the same catalogue where there is none', () => {
  const nothing = { families: [], models: [], repairs: [] };
  fc.assert(
    fc.property(catalogue, (known) => {
      const { rows } = readCsv(writeCsv(listRows(known, settings), layout), layout);
      const plan = planImport({ rows, known: nothing, referred, settings });
      expect(plan.problems).toEqual([]);
      expect(plan.families.map(({ slug, data }) => ({ slug, data }))).toEqual(
        known.families.map(({ slug, data }) => ({ slug, data })),
      );
      expect(plan.models.map(({ slug, data }) => ({ slug, ...data }))).toEqual(
        known.models.map(({ slug, familySlug, data }) => ({ slug, ...data, familySlug })),
      );
      expect(plan.repairs.map(({ slug, data }) => ({ slug, ...data }))).toEqual(
        known.repairs.map(({ slug, modelSlug, data }) => ({ slug, ...data, modelSlug })),
      );
    }),
    { numRuns: 300 },
  );
});
