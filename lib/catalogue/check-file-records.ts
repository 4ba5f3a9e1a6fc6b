import { PIN_TABLES } from '@/lib/bench/rules/pin-tables/all';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { writeCsv } from './csv';
import { CHECK_LAYOUT, type Connector, checkRows, type KnownSheet } from './rules/check-file';
import { readCheck } from './stored';

/** The newest check sheet of every repair, model by model, in the order of the catalogue's own file. */
export async function readKnownSheets(client: Tx = db): Promise<KnownSheet[]> {
  const repairs = await client.repair.findMany({
    orderBy: [
      { model: { family: { position: 'asc' } } },
      { model: { family: { name: 'asc' } } },
      { model: { maker: 'asc' } },
      { model: { name: 'asc' } },
      { model: { slug: 'asc' } },
      { name: 'asc' },
      { slug: 'asc' },
    ],
    select: { id: true, slug: true, model: { select: { slug: true } } },
  });
  const newest = await client.checkSheet.findMany({
    distinct: ['repairId'],
    orderBy: [{ repairId: 'asc' }, { version: 'desc' }],
    select: { repairId: true, version: true, checks: { orderBy: { position: 'asc' } } },
  });
  const sheetOf = new Map(newest.map((sheet) => [sheet.repairId, sheet]));
  return repairs.map(({ id, slug, model }) => {
    const sheet = sheetOf.get(id);
    return {
      repairId: id,
      modelAddress: model.slug,
      repairAddress: slug,
      version: sheet?.version ?? 0,
      checks: (sheet?.checks ?? []).map(readCheck),
    };
  });
}

/** Every pin table that a check may name: those that ship, and the workshop's own, replaced ones too. */
export async function readConnectors(client: Tx = db): Promise<Connector[]> {
  const own = await client.pinTable.findMany({ select: { id: true, name: true, retiredAt: true } });
  return [
    ...PIN_TABLES.map(({ key, name }) => ({ key, name, isOffered: true })),
    ...own.map(({ id, name, retiredAt }) => ({ key: id, name, isOffered: retiredAt === null })),
  ];
}

/** Every check sheet as the text of a CSV file. */
export async function exportChecks(client: Tx = db): Promise<string> {
  return writeCsv(checkRows(await readKnownSheets(client), await readConnectors(client)), CHECK_LAYOUT);
}
