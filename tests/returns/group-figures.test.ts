import { parse } from 'csv-parse/sync';
import { beforeAll, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { coverClock } from '@/lib/returns/cover-clock';
import { readGroupFigures } from '@/lib/returns/group-figures';
import { GROUPINGS } from '@/lib/returns/groupings';
import { rowsCsv } from '@/lib/returns/rows-csv';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { makeCertificate } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-03-01T10:00:00Z');

beforeAll(async () => {
  const world = await makeWorkshop(SENT);
  await makeCertificate(world, SENT, 'FR2-70001-A', 1);
  await makeCertificate(world, SENT, 'FR2-70002-B', 1);
}, 120_000);

it.each(GROUPINGS)('tells the two units by %s, and flags nothing', async (grouping) => {
  const clock = coverClock(await readWorkshop(), NOW);
  const figures = await readGroupFigures(grouping, clock);
  expect(figures).toHaveLength(1);
  for (const { tally, comparison, name } of figures) {
    expect(tally).toMatchObject({ units: 2, returned: 0, otherwise: 0 });
    expect(comparison).toMatchObject({ evidence: 'none-yet', rest: { units: 0, returned: 0 } });
    expect(name).not.toBe('no longer known');
  }
});

it('writes the rows as a file, without money and people for those who may not see them', async () => {
  const clock = coverClock(await readWorkshop(), NOW);
  const read = async (hasCost: boolean, hasPeople: boolean) => {
    let text = '';
    for await (const part of rowsCsv(clock, {}, { currency: 'GBP', hasCost, hasPeople })) text += part;
    return text.trimEnd().split('\r\n');
  };
  const [head, ...rows] = await read(true, true);
  expect(head).toMatch(/^\uFEFFCertificate,.*,"?Cost, GBP"?,Most of the work by$/);
  expect(rows.length).toBeGreaterThanOrEqual(2);
  for (const row of rows) expect(row).toContain('Nils Pier');
  const plain = await read(false, false);
  expect(plain).toHaveLength(rows.length + 1);
  expect(plain.join('\n')).not.toMatch(/Cost|Nils|work by/);
});

// OWASP ASVS 5.0, 1.2.10: a cell that begins with one of these is a formula to a spreadsheet; an apostrophe makes it text.
it('writes no cell that a spreadsheet would run, whatever things are called', async () => {
  const clock = coverClock(await readWorkshop(), NOW);
  await db.repair.updateMany({ data: { name: '=HYPERLINK("https://example.org")' } });
  await db.model.updateMany({ data: { maker: '+Tideline' } });
  await db.part.updateMany({ data: { name: '-2+3' } });
  await db.lot.updateMany({ data: { supplier: '@SUM(A1)' } });
  await db.policy.updateMany({ data: { name: '\t=1+1' } });
  await db.user.updateMany({ data: { name: '=cmd' } });
  let text = '';
  for await (const part of rowsCsv(clock, {}, { currency: 'GBP', hasCost: true, hasPeople: true }))
    text += part;
  const cells: string[][] = parse(text, { bom: true });
  expect(cells.flat().filter((cell) => /^[=+\-@\t\r]/.test(cell))).toEqual([]);
  for (const told of ["'=HYPERLINK", "'+Tideline", "'-2+3", "'@SUM", "'=cmd", "'\t=1+1"])
    expect(
      cells.flat().some((cell) => cell.startsWith(told)),
      told,
    ).toBe(true);
});
