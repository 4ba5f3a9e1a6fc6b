import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';

export type DeviceChoice = { id: string; name: string; family: string };

/** Devices of the price list that somebody may ask about, one of them, where it was chosen before, with its symptoms. */
export async function askChoices(
  modelId?: string,
): Promise<{ devices: DeviceChoice[]; chosen: { id: string; name: string; symptoms: string[] } | null }> {
  const rows = await db.model.findMany({
    where: { isListed: true },
    orderBy: [
      { family: { position: 'asc' } },
      { family: { name: 'asc' } },
      { maker: 'asc' },
      { name: 'asc' },
    ],
    select: {
      id: true,
      maker: true,
      name: true,
      family: { select: { name: true } },
      repairs: { where: { isListed: true }, orderBy: { name: 'asc' }, select: { symptoms: true } },
    },
  });
  const chosen = rows.find(({ id }) => id === modelId);
  return {
    devices: rows.map((row) => ({ id: row.id, name: unitName(row), family: row.family.name })),
    chosen: chosen
      ? {
          id: chosen.id,
          name: unitName(chosen),
          symptoms: [...new Set(chosen.repairs.flatMap(({ symptoms }) => symptoms))],
        }
      : null,
  };
}
