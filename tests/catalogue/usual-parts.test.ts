import { beforeEach, describe, expect, test } from 'vitest';
import { putUsualPart, removeUsualPart, usualPartsOf } from '@/lib/catalogue/usual-parts';
import { transaction } from '@/lib/db/transaction';
import { loadCatalogue } from '@/prisma/demo/catalogue';
import { demoId } from '@/prisma/demo/demo-id';
import { useDatabase } from '@/tests/database';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');
const gullUsb = demoId('repair', 'gull/usb-socket');

useDatabase();
beforeEach(
  madeOnce(() => transaction((tx) => loadCatalogue(tx, now))),
  30_000,
);

describe('the parts a repair usually needs', () => {
  test('stand with what is in stock of them', async () => {
    expect(await usualPartsOf(gullUsb)).toMatchObject([{ code: 'USB-MB-5', quantity: 1, inStock: 50 }]);
    expect(await usualPartsOf(demoId('repair', 'slipway-16/midi-sockets'))).toMatchObject([
      { code: 'DIN-5', quantity: 2 },
    ]);
  });

  test('take another part by its code, however it is written, and another number of pieces', async () => {
    await putUsualPart({ repairId: gullUsb, code: ' usb-c-24 ', quantity: 1 });
    await putUsualPart({ repairId: gullUsb, code: 'USB-C-24', quantity: 2 });
    expect((await usualPartsOf(gullUsb)).map((part) => [part.code, part.quantity])).toEqual([
      ['USB-C-24', 2],
      ['USB-MB-5', 1],
    ]);
  });

  test('let go of one', async () => {
    const [part] = await usualPartsOf(gullUsb);
    await removeUsualPart({ repairId: gullUsb, partId: part?.partId ?? '' });
    expect(await usualPartsOf(gullUsb)).toEqual([]);
  });

  test.each([
    { name: 'a code nobody knows', input: { code: 'USB-X', quantity: 1 }, field: 'code' },
    { name: 'a code like one that is known', input: { code: 'USB_C_24', quantity: 1 }, field: 'code' },
    { name: 'a backslash before a code', input: { code: '\\USB-C-24', quantity: 1 }, field: 'code' },
    { name: 'no piece at all', input: { code: 'USB-C-24', quantity: 0 }, field: 'quantity' },
  ])('refuse $name', async ({ input, field }) => {
    await expect(putUsualPart({ repairId: gullUsb, ...input })).rejects.toMatchObject({ field });
    expect(await usualPartsOf(gullUsb)).toHaveLength(1);
  });

  test('belong to a repair of the catalogue', async () => {
    const lost = putUsualPart({ repairId: 'none', code: 'USB-C-24', quantity: 1 });
    await expect(lost).rejects.toMatchObject({ code: 'not-found' });
  });
});
