import { beforeEach, describe, expect, test } from 'vitest';
import { importFile, tryImport } from '@/lib/catalogue/import-file';
import { exportCatalogue, readKnownCatalogue } from '@/lib/catalogue/list-records';
import { priceHistory } from '@/lib/catalogue/price-history';
import { readRepair } from '@/lib/catalogue/staff-records';
import { usualPartsOf } from '@/lib/catalogue/usual-parts';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { DEMO_FAMILIES, DEMO_MODELS, DEMO_REPAIRS, loadCatalogue } from '@/prisma/demo/catalogue';
import { demoId } from '@/prisma/demo/demo-id';
import { useDatabase } from '@/tests/database';
import { tryCatalogue } from '@/tests/makers/catalogue-file';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');
const by = { now, userId: null };
const gullUsb = demoId('repair', 'gull/usb-socket');

useDatabase();
beforeEach(
  madeOnce(() => transaction((tx) => loadCatalogue(tx, now))),
  30_000,
);

/** Looks first, then imports what was seen, as the pages do. */
async function importText(text: string) {
  const { mark } = await tryImport(text);
  return importFile({ text, mark, by });
}

/** The export with one text in the line of a repair replaced. */
async function edited(repair: string, from: string, to: string): Promise<string> {
  const lines = (await exportCatalogue()).split('\r\n');
  const at = lines.findIndex((line) => line.includes('tideline-gull,') && line.includes(repair));
  const line = lines[at] ?? '';
  expect(line).toContain(from);
  return lines.with(at, line.replace(from, to)).join('\r\n');
}

describe('the export', () => {
  test('read back changes nothing and has no fault', async () => {
    const { plan, rows } = await tryCatalogue(await exportCatalogue());
    expect(rows).toBe(DEMO_REPAIRS.length);
    expect(plan).toEqual({
      families: [],
      models: [],
      repairs: [],
      unchanged: {
        families: DEMO_FAMILIES.length,
        models: DEMO_MODELS.length,
        repairs: DEMO_REPAIRS.length,
      },
      problems: [],
    });
  });

  test('fills an empty workshop with the same, but for check sheets', async () => {
    await db.model.update({
      where: { id: demoId('model', 'gull') },
      data: { aliases: ['=1+1', 'a; b', "'-x"], serialExample: '-118', serialPlace: '"Under", the clip' },
    });
    const text = await exportCatalogue();
    const before = await readKnownCatalogue();
    await db.repairPart.deleteMany();
    await db.checkSheet.deleteMany();
    await db.$executeRaw`TRUNCATE "repair", "model", "family" CASCADE`;
    await importText(text);
    expect(await exportCatalogue()).toBe(text);
    const after = await readKnownCatalogue();
    const bare = (all: readonly { id: string }[]) => all.map(({ id: _, ...rest }) => rest);
    expect(bare(after.models)).toEqual(bare(before.models));
    expect(bare(after.repairs)).toEqual(bare(before.repairs));
    const [repair] = await db.repair.findMany({ where: { slug: 'midi-sockets' }, select: { id: true } });
    expect((await readRepair(repair?.id ?? ''))?.sheets).toMatchObject([{ version: 1, checks: [{}] }]);
    expect(await db.repairPrice.count()).toBe(DEMO_REPAIRS.length);
  });
});

describe('an import', () => {
  test('changes a price, and the history has it', async () => {
    await importText(await edited('usb-socket', ',58.00,', ',61.50,'));
    expect(await readRepair(gullUsb)).toMatchObject({ priceMinor: 6150, slug: 'usb-socket' });
    expect((await priceHistory(gullUsb)).map((price) => price.priceMinor)).toEqual([6150, 5800]);
    expect(await db.repairPrice.count()).toBe(DEMO_REPAIRS.length + 1);
    expect((await readRepair(gullUsb))?.sheets).toHaveLength(1);
  });

  test('changes usual parts, and leaves the others’ alone', async () => {
    const before = await db.repairPart.count();
    await importText(await edited('usb-socket', ',USB-MB-5,', ',USB-C-24 x2; USB-MB-5,'));
    expect((await usualPartsOf(gullUsb)).map((part) => [part.code, part.quantity])).toEqual([
      ['USB-C-24', 2],
      ['USB-MB-5', 1],
    ]);
    expect(await db.repairPart.count()).toBe(before + 1);
    expect(await db.repairPrice.count()).toBe(DEMO_REPAIRS.length);
  });

  test('adds what is new and leaves alone what the file does not name', async () => {
    const [heads = '', ...lines] = (await exportCatalogue()).split('\r\n');
    const spar = lines.find((line) => line.includes('halmar-spar,')) ?? '';
    const fresh = spar
      .replace('halmar-spar,Halmar,Spar,', ',Halmar,Spar Two,')
      .replace(/,(battery|usb-socket|headphone-socket),/, ',,');
    await importText([heads, fresh].join('\r\n'));
    expect(await db.model.count()).toBe(DEMO_MODELS.length + 1);
    expect(await db.repair.count()).toBe(DEMO_REPAIRS.length + 1);
    const model = await db.model.findUniqueOrThrow({
      where: { slug: 'halmar-spar-two' },
      include: {
        family: true,
        repairs: { include: { sheets: { include: { checks: true } }, prices: true } },
      },
    });
    expect(model).toMatchObject({ name: 'Spar Two', family: { slug: 'headphone-amplifiers' } });
    expect(model.repairs).toMatchObject([{ sheets: [{ version: 1, checks: [{}] }], prices: [{}] }]);
  });

  test('with one fault among many rows writes nothing at all', async () => {
    const text = (await edited('usb-socket', ',58.00,', ',61.50,')).replace(',44.00,', ',lots,');
    const { plan, mark } = await tryCatalogue(text);
    expect(plan.problems).toMatchObject([{ column: 'price' }]);
    await expect(importFile({ text, mark, by })).rejects.toMatchObject({ code: 'invalid' });
    expect(await readRepair(gullUsb)).toMatchObject({ priceMinor: 5800 });
  });

  test('that fails half-way keeps nothing', async () => {
    const text = await edited('usb-socket', ',58.00,', ',61.50,');
    const { mark } = await tryImport(text);
    // A history that cannot be written, after the prices were.
    const lost = importFile({ text, mark, by: { now: new Date(Number.NaN), userId: null } });
    await expect(lost).rejects.toThrow();
    expect(await readRepair(gullUsb)).toMatchObject({ priceMinor: 5800 });
  });

  test('of what somebody else changed since it was looked at is a conflict', async () => {
    const text = await edited('usb-socket', ',58.00,', ',61.50,');
    const { mark } = await tryImport(text);
    await db.repair.update({ where: { id: gullUsb }, data: { priceMinor: 5900 } });
    await expect(importFile({ text, mark, by })).rejects.toMatchObject({ code: 'conflict' });
    expect(await readRepair(gullUsb)).toMatchObject({ priceMinor: 5900 });
    await importText(text);
    expect(await readRepair(gullUsb)).toMatchObject({ priceMinor: 6150 });
  });

  test('done a second time is a conflict, or changes nothing when it is looked at again', async () => {
    const text = await edited('usb-socket', ',58.00,', ',61.50,');
    const { mark } = await tryImport(text);
    await importFile({ text, mark, by });
    await expect(importFile({ text, mark, by })).rejects.toMatchObject({ code: 'conflict' });
    await importText(text);
    expect(await db.repairPrice.count()).toBe(DEMO_REPAIRS.length + 1);
  });
});
