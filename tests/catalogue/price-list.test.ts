import { beforeAll, describe, expect, test } from 'vitest';
import { readPricedKinds } from '@/lib/catalogue/price-kinds';
import { type PricePage, readPricePage } from '@/lib/catalogue/price-list';
import { MODELS_PER_PAGE } from '@/lib/catalogue/rules/price-pages';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { DEMO_REPAIRS, loadCatalogue } from '@/prisma/demo/catalogue';
import { demoId } from '@/prisma/demo/demo-id';
import { resetDatabase, useDatabase } from '@/tests/database';

const MANY = 2 * MODELS_PER_PAGE;

useDatabase();
beforeAll(async () => {
  await resetDatabase();
  await transaction((tx) => loadCatalogue(tx, new Date('2026-11-25T09:00:00Z')));
}, 60_000);

const read = (o: { search?: string; kind?: string; page?: number; pricesIncludeTax?: boolean } = {}) =>
  readPricePage({ search: '', kind: undefined, page: 1, pricesIncludeTax: true, ...o });
const modelsOf = ({ families }: PricePage) => families.flatMap((family) => family.models);
const repairsOf = (page: PricePage) => modelsOf(page).flatMap((model) => model.repairs);

describe('the price list', () => {
  test('holds every family, and every listed repair once', async () => {
    const page = await read();
    expect(page.families.map((family) => family.name)).toEqual([
      'Field recorders',
      'Groove boxes',
      'Effect pedals',
      'Headphone amplifiers',
      'Keyboard controllers',
    ]);
    expect(new Set(repairsOf(page).map(({ id }) => id)).size).toBe(DEMO_REPAIRS.length);
    expect(page).toMatchObject({ found: DEMO_REPAIRS.length, page: 1, pages: 1, chosen: null });
  });

  test('forgives a typo, and puts the best first', async () => {
    const page = await read({ search: 'meridain usb' });
    expect(modelsOf(page).map((model) => model.name)).toEqual(['Meridian Four', 'Meridian Two']);
    expect(modelsOf(page)[0]?.repairs.map((repair) => repair.name)).toEqual(['USB-C socket replaced']);
    expect(page.found).toBe(2);
  });

  test('finds a model by what people call it', async () => {
    expect(modelsOf(await read({ search: 'sw8' })).map((model) => model.name)).toEqual(['Slipway 8']);
  });

  test('says so where nothing fits', async () => {
    expect(await read({ search: 'zeppelin' })).toMatchObject({ kinds: [], families: [], found: 0, pages: 1 });
  });

  test('narrowed to a kind of device still offers the others, with what fits of each', async () => {
    const page = await read({ search: 'usb', kind: 'groove-boxes' });
    expect(page.families.map((family) => family.slug)).toEqual(['groove-boxes']);
    expect(page.chosen?.repairs).toBe(page.found);
    expect(page.kinds.length).toBeGreaterThan(1);
    expect(await read({ kind: 'zeppelins' })).toMatchObject({ chosen: null, found: DEMO_REPAIRS.length });
  });

  test('says the price with tax where the workshop keeps prices without', async () => {
    const id = demoId('repair', 'gull/usb-socket');
    const price = (page: PricePage) => repairsOf(page).find((repair) => repair.id === id)?.grossMinor;
    expect(price(await read())).toBe(5800);
    expect(price(await read({ pricesIncludeTax: false }))).toBe(6960);
  });

  test('names each kind with its lowest price, which its own page says too', async () => {
    for (const pricesIncludeTax of [true, false]) {
      const expected = await Promise.all(
        (await read()).kinds.map(async ({ slug, name, repairs }) => {
          const page = await read({ kind: slug, pricesIncludeTax });
          const fromMinor = Math.min(...repairsOf(page).map((repair) => repair.grossMinor));
          return { slug, name, repairs, fromMinor };
        }),
      );
      expect(await readPricedKinds(pricesIncludeTax)).toEqual(expected);
    }
  });
});

describe('a longer list', () => {
  test('is cut into pages that hold each repair once, and leave out what is not listed', async () => {
    const gull = await db.model.findFirstOrThrow({ where: { id: demoId('model', 'gull') } });
    const repair = await db.repair.findFirstOrThrow({ where: { modelId: gull.id } });
    for (let i = 0; i < MANY; i += 1) {
      const [id, slug] = [`model-${i}`, `many-${i}`];
      await db.model.create({ data: { ...gull, id, slug, name: `Many ${i}`, isListed: i % 10 !== 0 } });
      await db.repair.createMany({
        data: [true, false].map((isListed) => ({
          ...repair,
          id: `repair-${i}-${isListed}`,
          slug: `${repair.slug}-${isListed}`,
          modelId: id,
          isListed,
        })),
      });
    }
    const { pages, found } = await read();
    const all = await Promise.all(Array.from({ length: pages }, (_, i) => read({ page: i + 1 })));
    const listed = await db.repair.findMany({
      where: { isListed: true, model: { isListed: true } },
      orderBy: [
        { model: { family: { position: 'asc' } } },
        { model: { family: { name: 'asc' } } },
        { model: { maker: 'asc' } },
        { model: { name: 'asc' } },
        { name: 'asc' },
      ],
      select: { id: true },
    });
    expect(pages).toBe(3);
    expect(all.flatMap(repairsOf).map(({ id }) => id)).toEqual(listed.map(({ id }) => id));
    expect(found).toBe(listed.length);
  }, 60_000);
});
