import { beforeEach, describe, expect, test } from 'vitest';
import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import { readModelPage, symptomsOfRepairs } from '@/lib/catalogue/records';
import { retirePolicy } from '@/lib/catalogue/retire-policy';
import { adding, moving, removing, replacing } from '@/lib/catalogue/rules/sheet-changes';
import { saveCheckSheet } from '@/lib/catalogue/save-check-sheet';
import { saveFamily } from '@/lib/catalogue/save-family';
import { type ModelInput, saveModel } from '@/lib/catalogue/save-model';
import { savePolicyVersion } from '@/lib/catalogue/save-policy-version';
import { type RepairInput, saveRepair } from '@/lib/catalogue/save-repair';
import {
  listCatalogue,
  listChoices,
  listPolicies,
  readModel,
  readPolicy,
  readRepair,
} from '@/lib/catalogue/staff-records';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { loadCatalogue } from '@/prisma/demo/catalogue';
import { demoId } from '@/prisma/demo/demo-id';
import { useDatabase } from '@/tests/database';
import { shownNow } from '@/tests/makers/shown';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');
const by = { now, userId: null };
const gullUsb = demoId('repair', 'gull/usb-socket');
const gull = demoId('model', 'gull');

useDatabase();
beforeEach(
  madeOnce(() => transaction((tx) => loadCatalogue(tx, now))),
  30_000,
);

const tick: CheckDraft = {
  kind: 'tick',
  label: 'Cable holds when tilted',
  help: '',
  unit: null,
  low: null,
  high: null,
  choices: [],
  passing: [],
  lesson: 'C4K7QX29D',
  caution: null,
};

const repairInput = {
  modelId: gull,
  policyId: demoId('policy', 'connector-work'),
  name: 'Belt clip replaced',
  summary: 'A new clip.',
  priceMinor: 1200,
  taxCategory: 'S',
  taxRateBps: 2000,
  minutes: 10,
  workingDays: 2,
  symptoms: ['The clip is broken'],
  isListed: true,
  priceKind: 'GBP with tax',
} satisfies RepairInput & { priceKind: string };

describe('a repair to book', () => {
  test('is none that is not listed, nor any of a model that is not', async () => {
    await db.repair.update({ where: { id: gullUsb }, data: { isListed: false } });
    await db.model.update({ where: { slug: 'skerrin-minnow' }, data: { isListed: false } });
    expect(await readModelPage('skerrin-minnow')).toBeNull();
    expect(await readBookingRepair(gullUsb)).toBeNull();
    expect(await readBookingRepair(demoId('repair', 'minnow/liquid'))).toBeNull();
  });

  test('says the price with tax where the workshop keeps prices without', async () => {
    const settings = { name: 'Q', tagline: '', postcode: '', town: '', country: 'GB', email: '', phone: '' };
    await db.workshop.create({
      data: {
        ...settings,
        timeZone: 'Europe/London',
        currency: 'GBP',
        locale: 'en-GB',
        pricesIncludeTax: false,
        holidayCountry: 'GB',
        returnFeeMinor: 0,
        inspectionFeeMinor: 0,
        labourRateMinor: 0,
        paymentText: '',
        termsText: '',
        privacyText: '',
        territory: '',
      },
    });
    expect((await readBookingRepair(gullUsb))?.grossMinor).toBe(6960);
  });

  test('gives a booking its model and its terms', async () => {
    const repair = await readBookingRepair(demoId('repair', 'meridian-two/usb-socket'));
    expect(repair).toMatchObject({
      grossMinor: 7200,
      model: { name: 'Meridian Two', battery: 'lithium-ion', batteryWh: 9.25 },
      terms: { workTerm: 'P12M', heldRule: 'whole-days' },
    });
  });
});

describe('a repair', () => {
  test('is added with the first version of its sheet, under a free address', async () => {
    const id = await saveRepair(null, repairInput, by);
    const again = await saveRepair(null, repairInput, by);
    const repair = await readRepair(id);
    expect(repair).toMatchObject({ slug: 'belt-clip-replaced', priceMinor: 1200 });
    expect(repair?.sheets).toMatchObject([{ version: 1, checks: [{ kind: 'tick', position: 1 }] }]);
    expect((await readRepair(again))?.slug).toBe('belt-clip-replaced-2');
  });

  test('is changed without a new sheet, and stays with its model', async () => {
    await saveRepair(
      await shownNow('repair', gullUsb),
      { ...repairInput, name: 'Micro-USB socket renewed' },
      by,
    );
    expect(await readRepair(gullUsb)).toMatchObject({ name: 'Micro-USB socket renewed', slug: 'usb-socket' });
    // Prices that were agreed to bear the old name.
    const known = await symptomsOfRepairs(demoId('model', 'gull'));
    expect(known.get('Micro-USB socket replaced')).toEqual(repairInput.symptoms);
    await expect(
      saveRepair(await shownNow('repair', gullUsb), { ...repairInput, modelId: demoId('model', 'spar') }, by),
    ).rejects.toMatchObject({
      code: 'not-found',
    });
  });

  test.each([
    { name: 'a model that is gone', change: { modelId: 'none' }, code: 'not-found' },
    { name: 'a policy that is gone', change: { policyId: 'none' }, code: 'invalid' },
    { name: 'a rate on an exempt category', change: { taxCategory: 'E' as const }, code: 'invalid' },
    { name: 'a standard rate of nothing', change: { taxRateBps: 0 }, code: 'invalid' },
  ])('with $name is refused', async ({ change, code }) => {
    await expect(saveRepair(null, { ...repairInput, ...change }, by)).rejects.toMatchObject({ code });
  });
});

describe('a check sheet', () => {
  const sheetsOf = async () => (await readRepair(gullUsb))?.sheets ?? [];

  test('that changes gets a new version; the old one stays as it was', async () => {
    const [before] = await sheetsOf();
    const version = await saveCheckSheet({ repairId: gullUsb, basedOn: 1, change: adding(tick), now });
    expect(version).toBe(2);
    const [newest, older] = await sheetsOf();
    expect(newest?.checks.at(-1)).toMatchObject({ label: tick.label, lesson: 'C4K7QX29D' });
    expect(newest?.checks).toHaveLength((before?.checks.length ?? 0) + 1);
    expect(older).toEqual(before);
  });

  test('takes changed, moved and removed checks', async () => {
    const labels = async () => (await sheetsOf())[0]?.checks.map((check) => check.label) ?? [];
    const [first, second, ...rest] = await labels();
    await saveCheckSheet({ repairId: gullUsb, basedOn: 1, change: moving(1, 1), now });
    expect(await labels()).toEqual([second, first, ...rest]);
    await saveCheckSheet({ repairId: gullUsb, basedOn: 2, change: replacing(1, tick), now });
    expect(await labels()).toEqual([tick.label, first, ...rest]);
    await saveCheckSheet({ repairId: gullUsb, basedOn: 3, change: removing(1), now });
    expect(await labels()).toEqual([first, ...rest]);
  });

  test('that does not change gets no version', async () => {
    expect(await saveCheckSheet({ repairId: gullUsb, basedOn: 1, change: (checks) => checks, now })).toBe(1);
    expect(await saveCheckSheet({ repairId: gullUsb, basedOn: 1, change: moving(1, -1), now })).toBe(1);
    expect(await sheetsOf()).toHaveLength(1);
  });

  test('changed from an old version is a conflict', async () => {
    await saveCheckSheet({ repairId: gullUsb, basedOn: 1, change: adding(tick), now });
    const late = saveCheckSheet({ repairId: gullUsb, basedOn: 1, change: adding(tick), now });
    await expect(late).rejects.toMatchObject({ code: 'conflict' });
    expect(await sheetsOf()).toHaveLength(2);
  });

  test.each([
    { name: 'no check left', change: () => [] },
    { name: 'a check that could not fail', change: adding({ ...tick, kind: 'reading', unit: 'V' }) },
    { name: 'more checks than anybody reads', change: () => Array.from({ length: 61 }, () => tick) },
  ])('with $name is refused', async ({ change }) => {
    const refused = saveCheckSheet({ repairId: gullUsb, basedOn: 1, change, now });
    await expect(refused).rejects.toMatchObject({ code: 'invalid' });
  });
});

describe('a policy', () => {
  const id = demoId('policy', 'connector-work');
  const termsNow = async () => {
    const terms = (await readPolicy(id))?.versions[0]?.terms;
    if (!terms) throw new Error('no terms');
    return terms;
  };

  test('that changes gets a new version; repairs take the newest', async () => {
    const terms = { ...(await termsNow()), workTerm: 'P24M' };
    const shown = await shownNow('policy', id);
    const saved = await savePolicyVersion({ shown, name: 'Connector work', terms, now });
    expect(saved).toEqual({ policyId: id, version: 2 });
    expect((await readPolicy(id))?.versions.map((version) => version.terms.workTerm)).toEqual([
      'P24M',
      'P12M',
    ]);
    expect((await readBookingRepair(gullUsb))?.terms.workTerm).toBe('P24M');
  });

  test('with only a new name gets none', async () => {
    const shown = await shownNow('policy', id);
    const write = { shown, name: 'Socket work', terms: await termsNow(), now };
    expect(await savePolicyVersion(write)).toEqual({ policyId: id, version: 1 });
    expect((await readPolicy(id))?.name).toBe('Socket work');
  });

  test('that is retired is offered to no repair but those that have it, until it is offered again', async () => {
    const offered = async (repairId?: string) =>
      (await listChoices(repairId)).policies.some((policy) => policy.id === id);
    await retirePolicy({ id, isRetired: true, now });
    await expect(retirePolicy({ id, isRetired: true, now })).rejects.toMatchObject({ code: 'conflict' });
    expect([await offered(), await offered(gullUsb)]).toEqual([false, true]);
    expect((await readBookingRepair(gullUsb))?.terms.workTerm).toBe('P12M');
    await retirePolicy({ id, isRetired: false, now });
    expect(await offered()).toBe(true);
  });

  test.each([
    { name: 'an old version', change: { graceDays: 9 } },
    { name: 'an old name', change: {} },
  ])('changed from $name is a conflict', async ({ change }) => {
    const terms = await termsNow();
    const shown = await shownNow('policy', id);
    await savePolicyVersion({ shown, name: 'A', terms: { ...terms, ...change }, now });
    const late = savePolicyVersion({ shown, name: 'B', terms: { ...terms, graceDays: 5 }, now });
    await expect(late).rejects.toMatchObject({ code: 'conflict' });
    expect(await readPolicy(id)).toMatchObject({ name: 'A' });
  });

  test.each([
    { name: 'a name in use', name_: 'Liquid damage work', change: {}, field: 'name' },
    { name: 'a term nobody can count', name_: 'New', change: { workTerm: '12 months' }, field: 'workTerm' },
    { name: 'nothing covered', name_: 'New', change: { workTerm: null, partsTerm: null }, field: 'workTerm' },
    { name: 'a year of grace', name_: 'New', change: { graceDays: 365 }, field: 'graceDays' },
  ])('with $name is refused', async ({ name_, change, field }) => {
    const terms = { ...(await termsNow()), ...change };
    const refused = savePolicyVersion({ shown: null, name: name_, terms, now });
    await expect(refused).rejects.toMatchObject({ field });
    expect(await listPolicies()).toHaveLength(3);
  });
});

describe('models and families', () => {
  const input: ModelInput = {
    familyId: demoId('family', 'groove-boxes'),
    maker: 'Skerrin',
    name: 'Minnow',
    aliases: [],
    serialPattern: null,
    serialRule: 'none',
    serialExample: '',
    serialPlace: '',
    battery: 'none',
    batteryWh: 5,
    isMainsPowered: false,
    weightGrams: 0,
    lengthMm: 0,
    widthMm: 0,
    heightMm: 0,
    tariffNumber: '',
    accessories: [],
    isListed: false,
  };

  test('a model of a taken name gets an address of its own, and no size without a battery', async () => {
    const model = await readModel(await saveModel(null, input));
    expect(model).toMatchObject({ slug: 'skerrin-minnow-2', batteryWh: null });
  });

  test('a changed model keeps its address', async () => {
    await saveModel(await shownNow('model', gull), { ...input, name: 'Gull II' });
    expect(await readModel(gull)).toMatchObject({ name: 'Gull II', slug: 'tideline-gull' });
  });

  test.each([
    {
      name: 'a lithium battery without its size',
      change: { battery: 'lithium-ion' as const, batteryWh: null },
      field: 'batteryWh',
    },
    { name: 'a pattern that takes for ever', change: { serialPattern: '(a+)+' }, field: 'serialPattern' },
    { name: 'a family that is gone', change: { familyId: 'none' }, field: 'familyId' },
    { name: 'only one side of its size', change: { lengthMm: 120, heightMm: 30 }, field: 'widthMm' },
  ])('a model with $name is refused', async ({ change, field }) => {
    await expect(saveModel(null, { ...input, ...change })).rejects.toMatchObject({ field });
  });

  test('a family is added at its place and changed', async () => {
    const id = await saveFamily(null, { name: 'Tuners', position: 0 });
    expect((await listCatalogue())[0]).toMatchObject({ slug: 'tuners', models: [] });
    const shown = await shownNow('family', id);
    await saveFamily(shown, { name: 'Clip tuners', position: 9 });
    expect((await listCatalogue()).at(-1)).toMatchObject({ slug: 'tuners', name: 'Clip tuners' });
    const late = saveFamily(shown, { name: 'Tuners', position: 2 });
    await expect(late).rejects.toMatchObject({ code: 'conflict' });
    const gone = saveFamily(await shownNow('family', 'none'), { name: 'X', position: 0 });
    await expect(gone).rejects.toMatchObject({ code: 'not-found' });
  });
});
