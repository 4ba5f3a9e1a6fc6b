import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';

export type WalkInRepair = { id: string; modelId: string; unit: string; repair: string };

/** Every repair that a job can be opened with, by unit: also those that are not on the public list. */
export async function walkInRepairs(): Promise<WalkInRepair[]> {
  const rows = await db.repair.findMany({
    where: { sheets: { some: {} } },
    orderBy: [{ model: { maker: 'asc' } }, { model: { name: 'asc' } }, { name: 'asc' }],
    select: { id: true, modelId: true, name: true, model: { select: { maker: true, name: true } } },
  });
  return rows.map((row) => ({
    id: row.id,
    modelId: row.modelId,
    unit: unitName(row.model),
    repair: row.name,
  }));
}
