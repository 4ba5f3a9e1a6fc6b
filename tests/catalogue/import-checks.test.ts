import { beforeEach, describe, expect, test } from 'vitest';
import { exportChecks, readKnownSheets } from '@/lib/catalogue/check-file-records';
import { importFile, tryImport } from '@/lib/catalogue/import-file';
import { exportCatalogue } from '@/lib/catalogue/list-records';
import { exportPolicies, readKnownPolicies } from '@/lib/catalogue/policy-file-records';
import { FIRST_CHECK } from '@/lib/catalogue/rules/first-check';
import { adding } from '@/lib/catalogue/rules/sheet-changes';
import { saveCheckSheet } from '@/lib/catalogue/save-check-sheet';
import { readRepair } from '@/lib/catalogue/staff-records';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { DEMO_POLICIES, DEMO_REPAIRS, loadCatalogue } from '@/prisma/demo/catalogue';
import { demoId } from '@/prisma/demo/demo-id';
import { useDatabase } from '@/tests/database';
import { tryChecks, tryPolicies } from '@/tests/makers/catalogue-file';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');
const by = { now, userId: null };
const gullUsb = demoId('repair', 'gull/usb-socket');

useDatabase();
beforeEach(
  madeOnce(() => transaction((tx) => loadCatalogue(tx, now))),
  30_000,
);

async function importText(text: string) {
  const { mark } = await tryImport(text);
  return importFile({ text, mark, by });
}

const newestOf = async (repairId: string) =>
  db.checkSheet.findFirstOrThrow({
    where: { repairId },
    orderBy: { version: 'desc' },
    include: { checks: { orderBy: { position: 'asc' } } },
  });

/** The headings and the rows of one repair, its first label replaced. */
async function gullRows(label?: string): Promise<string> {
  const [heads, ...rows] = (await exportChecks()).split('\r\n');
  const own = rows.filter((row) => row.startsWith('tideline-gull,usb-socket,'));
  const sheet = await newestOf(gullUsb);
  const first = sheet.checks[0]?.label ?? '';
  expect(own).toHaveLength(sheet.checks.length);
  expect(own[0]).toContain(first);
  return [heads, ...own].join('\r\n').replace(first, label ?? first);
}

describe('the check sheets', () => {
  test('read back change nothing and have no fault', async () => {
    const { plan, rows } = await tryChecks(await exportChecks());
    expect(plan).toEqual({ sheets: [], unchanged: DEMO_REPAIRS.length, problems: [] });
    expect(rows).toBe((await readKnownSheets()).flatMap(({ checks }) => checks).length);
  });

  test('fill a workshop that has the catalogue alone', async () => {
    const [catalogue, checks] = [await exportCatalogue(), await exportChecks()];
    await db.repairPart.deleteMany();
    await db.checkSheet.deleteMany();
    await db.$executeRaw`TRUNCATE "repair", "model", "family" CASCADE`;
    await importText(catalogue);
    await importText(checks);
    expect(await exportChecks()).toBe(checks);
    expect(await exportCatalogue()).toBe(catalogue);
  });

  test('a changed one gets its next version, the others stay', async () => {
    const before = await newestOf(gullUsb);
    const all = await db.checkSheet.count();
    await importText(await gullRows('=Every light'));
    const after = await newestOf(gullUsb);
    expect(after).toMatchObject({ version: before.version + 1, createdAt: now });
    const bare = ({ checks }: typeof after) => checks.map(({ id: _, sheetId: __, ...check }) => check);
    expect(bare(after)).toEqual(
      bare(before).map((check, i) => (i === 0 ? { ...check, label: '=Every light' } : check)),
    );
    expect(await db.checkSheet.count()).toBe(all + 1);
    expect((await readRepair(gullUsb))?.sheets.at(0)?.version).toBe(after.version);
  });

  test('with one fault among many rows write nothing at all', async () => {
    const all = await db.checkSheet.count();
    const text = (await gullRows('Every light')).replace(',tick,', ',photo,');
    const { plan, mark } = await tryChecks(text);
    expect(plan.problems).toMatchObject([{ column: 'kind' }]);
    await expect(importFile({ text, mark, by })).rejects.toMatchObject({ code: 'invalid' });
    expect(await db.checkSheet.count()).toBe(all);
  });

  test('that somebody changed since they were looked at are a conflict', async () => {
    const text = await gullRows('Every light');
    const { mark } = await tryImport(text);
    const { version: basedOn } = await newestOf(gullUsb);
    await saveCheckSheet({
      repairId: gullUsb,
      basedOn,
      change: adding({ ...FIRST_CHECK, label: 'More' }),
      now,
    });
    await expect(importFile({ text, mark, by })).rejects.toMatchObject({ code: 'conflict' });
    expect((await newestOf(gullUsb)).version).toBe(basedOn + 1);
  });

  test('know the workshop’s own pin tables by name', async () => {
    const table = { source: 'Service sheet', text: '1 GND', createdAt: now, userId: 'u' };
    const old = await db.pinTable.create({ data: { ...table, name: 'Gull dock', retiredAt: now } });
    const { id } = await db.pinTable.create({ data: { ...table, name: 'Gull dock' } });
    const { version: basedOn } = await newestOf(gullUsb);
    const named = (pinTable: string) =>
      adding({ ...FIRST_CHECK, kind: 'connector', label: `Pins ${pinTable}`, pinTable });
    await saveCheckSheet({ repairId: gullUsb, basedOn, change: named(old.id), now });
    await saveCheckSheet({ repairId: gullUsb, basedOn: basedOn + 1, change: named(id), now });
    const text = await exportChecks();
    expect(text).toContain(',Gull dock,');
    expect(text).toContain(`,${old.id},`);
    expect((await tryChecks(text)).plan).toMatchObject({ sheets: [], problems: [] });
  });
});

describe('the policies', () => {
  const change = async (text: (all: string) => string) => importText(text(await exportPolicies()));

  test('read back change nothing and have no fault', async () => {
    const { plan } = await tryPolicies(await exportPolicies());
    expect(plan).toEqual({ policies: [], unchanged: DEMO_POLICIES.length, problems: [] });
  });

  test('fill an empty workshop with the same', async () => {
    await db.policy.updateMany({ where: { name: DEMO_POLICIES[0]?.name ?? '' }, data: { retiredAt: now } });
    const [text, before] = [await exportPolicies(), await readKnownPolicies()];
    await db.checkSheet.deleteMany();
    await db.$executeRaw`TRUNCATE "policy" CASCADE`;
    await importText(text);
    expect(await exportPolicies()).toBe(text);
    const bare = (all: typeof before) => all.map(({ version, data }) => ({ version, data }));
    expect(bare(await readKnownPolicies())).toEqual(bare(before).map((each) => ({ ...each, version: 1 })));
  });

  test('a changed one gets its next version, a retired one none, a new one its first', async () => {
    const before = await readKnownPolicies();
    const [first, second] = before;
    if (!first || !second) throw new Error('the demonstration has two policies');
    const versions = await db.policyVersion.count();
    const heads = (await exportPolicies()).split('\r\n')[0];
    const rows = (await exportPolicies()).split('\r\n').slice(1);
    const rowOf = (name: string) => rows.find((row) => row.startsWith(`${name},`)) ?? '';
    await importText(
      [
        heads,
        rowOf(first.data.name).replace(/,(\d+ \w+),/, ',33 months,'),
        rowOf(second.data.name).replace(/,yes$/, ',no'),
        rowOf(first.data.name).replace(first.data.name, 'Fader work'),
      ].join('\r\n'),
    );
    const after = new Map((await readKnownPolicies()).map((each) => [each.data.name, each]));
    expect(after.get(first.data.name)).toMatchObject({
      id: first.id,
      version: first.version + 1,
      data: { terms: { ...first.data.terms, workTerm: 'P33M' } },
    });
    expect(after.get(second.data.name)).toEqual({ ...second, data: { ...second.data, isOffered: false } });
    expect(after.get('Fader work')).toMatchObject({ version: 1, data: { terms: first.data.terms } });
    expect(await db.policyVersion.count()).toBe(versions + 2);
    expect(after.size).toBe(before.length + 1);
  });

  test('a policy that was retired comes back', async () => {
    const name = DEMO_POLICIES[0]?.name ?? '';
    await db.policy.update({ where: { name }, data: { retiredAt: now } });
    await change((text) => text.replace(/,no(?=\r\n)/, ',yes'));
    expect(await db.policy.findUniqueOrThrow({ where: { name } })).toMatchObject({ retiredAt: null });
  });
});

test('a text without one heading of the three is refused as it stands', async () => {
  await expect(tryImport('Colour,Size\r\nred,4')).rejects.toMatchObject({ code: 'invalid' });
});
