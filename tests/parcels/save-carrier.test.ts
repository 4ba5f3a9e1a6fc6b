import { beforeAll, describe, expect, it } from 'vitest';
import { transaction } from '@/lib/db/transaction';
import { carriersInUse, readCarrierRow, readCarrierRows } from '@/lib/parcels/records';
import { type CarrierInput, saveCarrier } from '@/lib/parcels/save-carrier';
import { customsInput } from '@/lib/workshop/customs-input';
import { DEMO_CARRIERS, writeCarriers } from '@/prisma/demo/carriers';
import { useDatabase } from '@/tests/database';
import { shownNow } from '@/tests/makers/shown';

useDatabase();

const SKIFF: CarrierInput = {
  name: 'Skiff & Daughter',
  kind: 'road',
  divisor: 4000,
  wholeSides: true,
  stepGrams: 250,
  maxGrams: 15_000,
  longestSideMm: 800,
  maxValueMinor: 30_000,
  tracking: 'https://skiff.example.org/?p={reference}',
  daysHome: 2,
  daysAbroad: 25,
  position: 3,
  isUsed: true,
};

beforeAll(() => transaction(writeCarriers));

describe('the workshop’s list of carriers', () => {
  it('reads back as the rules take them, in its order', async () => {
    expect(await carriersInUse()).toEqual(DEMO_CARRIERS);
  });

  it('takes another one, changes it, and keeps one that is not used out of the choice', async () => {
    await saveCarrier(null, SKIFF);
    const added = (await readCarrierRows()).at(-1);
    expect(added).toMatchObject({
      name: SKIFF.name,
      maxWeight: 15_000,
      volume: { divisor: 4000, step: 250 },
    });
    const id = added?.id ?? '';
    await saveCarrier(await shownNow('carrier', id), { ...SKIFF, tracking: '', isUsed: false });
    expect(await readCarrierRow(id)).toMatchObject({ tracking: null, isUsed: false });
    expect((await carriersInUse()).map((each) => each.name)).not.toContain(SKIFF.name);
  });

  it.each([
    [{ name: 'FENROAD carriers' }, 'name'],
    [{ tracking: 'http://skiff.example.org/{reference}' }, 'tracking'],
    [{ tracking: 'https://skiff.example.org/' }, 'tracking'],
  ])('refuses %o at its field', async (change, field) => {
    const saved = saveCarrier(null, { ...SKIFF, name: 'Another', ...change });
    await expect(saved).rejects.toMatchObject({ field });
  });

  it('takes a name that is like one of the list, and not the same twice', async () => {
    const like = { ...SKIFF, name: 'Fenroad_carriers' };
    await saveCarrier(null, like);
    await expect(saveCarrier(null, { ...like, name: 'FENROAD_CARRIERS' })).rejects.toMatchObject({
      field: 'name',
    });
  });

  it('does not offer a carrier again when somebody corrects it on a page from before it was taken out', async () => {
    const dinghy = { ...SKIFF, name: 'Dinghy Freight' };
    await saveCarrier(null, dinghy);
    const id = (await readCarrierRows()).find((each) => each.name === dinghy.name)?.id ?? '';
    const shown = await shownNow('carrier', id);
    await saveCarrier(shown, { ...dinghy, isUsed: false });
    const late = saveCarrier(shown, { ...dinghy, tracking: '' });
    await expect(late).rejects.toMatchObject({ code: 'conflict' });
    expect(await readCarrierRow(id)).toMatchObject({ tracking: SKIFF.tracking, isUsed: false });
  });

  it('says when the carrier is gone', async () => {
    const gone = await shownNow('carrier', '0192aaaa-0000-7000-8000-000000000000');
    const saved = saveCarrier(gone, { ...SKIFF, name: 'Nobody' });
    await expect(saved).rejects.toMatchObject({ code: 'not-found' });
  });
});

describe('countries without a customs note', () => {
  it.each([
    ['', []],
    [' je, GG ;im\nje', ['JE', 'GG', 'IM']],
  ])('"%s" are read as %j', (typed, codes) => {
    expect(customsInput.parse({ customsFree: typed })).toEqual({ customsFree: codes });
  });

  it.each(['Jersey', 'UK', 'J'])('"%s" is refused', (typed) => {
    expect(customsInput.safeParse({ customsFree: typed }).success).toBe(false);
  });
});
