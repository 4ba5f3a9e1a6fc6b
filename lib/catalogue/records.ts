import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { BATTERY_KINDS, type BatteryKind } from '@/lib/parcels/rules/battery';
import { readWorkshop } from '@/lib/workshop/records';
import { type ListedRepair, listedRepair, listedRepairSelect } from './price-list';

/** A model with everything a customer may know of it. */
export type ModelPage = {
  id: string;
  slug: string;
  maker: string;
  name: string;
  family: { slug: string; name: string };
  battery: BatteryKind;
  batteryWh: number | null;
  isMainsPowered: boolean;
  weightGrams: number;
  /** Outer size, 0 where not known. */
  lengthMm: number;
  widthMm: number;
  heightMm: number;
  accessories: string[];
  serialPattern: string | null;
  serialRule: string;
  serialExample: string;
  serialPlace: string;
};

const modelPageSelect = {
  id: true,
  slug: true,
  maker: true,
  name: true,
  family: { select: { slug: true, name: true } },
  battery: true,
  batteryWh: true,
  isMainsPowered: true,
  weightGrams: true,
  lengthMm: true,
  widthMm: true,
  heightMm: true,
  accessories: true,
  serialPattern: true,
  serialRule: true,
  serialExample: true,
  serialPlace: true,
} as const;

/** A kind of battery read back; a word nobody knows counts as lithium-ion, the strictest. */
function batteryKind(text: string): BatteryKind {
  return BATTERY_KINDS.find((kind) => kind === text) ?? 'lithium-ion';
}

/** One listed model with its listed repairs, by the last part of its address; null when there is none. */
export async function readModelPage(
  slug: string,
  client: Tx = db,
): Promise<(ModelPage & { repairs: ListedRepair[] }) | null> {
  const model = await client.model.findUnique({
    where: { slug, isListed: true },
    select: {
      ...modelPageSelect,
      repairs: { where: { isListed: true }, orderBy: { name: 'asc' }, select: listedRepairSelect },
    },
  });
  if (!model) return null;
  const { pricesIncludeTax } = await readWorkshop(client);
  return {
    ...model,
    battery: batteryKind(model.battery),
    repairs: model.repairs.map((repair) => listedRepair(repair, pricesIncludeTax)),
  };
}

/** What each repair of a model may be claimed for, by its name; whether it is still listed does not matter. */
export async function symptomsOfRepairs(modelId: string): Promise<Map<string, string[]>> {
  const rows = await db.repair.findMany({
    where: { modelId },
    orderBy: { name: 'asc' },
    select: { name: true, formerNames: true, symptoms: true },
  });
  const former = rows.flatMap((row) => row.formerNames.map((name) => [name, row.symptoms] as const));
  return new Map([...former, ...rows.map((row) => [row.name, row.symptoms] as const)]);
}
