import { decimalText } from '@/lib/money/amount';
import type { TaxCategory } from '@/lib/money/tax';
import type { SerialRule } from '@/lib/numbers/serial';
import type { BatteryKind } from '@/lib/parcels/rules/battery';
import { joinEntries, type PartNeed, partEntry } from './list-cells';
import { type Cells, emptyCells, type ListSettings } from './list-columns';
import { percentText } from './percent';

/** What the list says of a family, a model and a repair. */
export type FamilyData = { name: string; position: number };

export type ModelData = {
  maker: string;
  name: string;
  aliases: string[];
  accessories: string[];
  weightGrams: number;
  lengthMm: number;
  widthMm: number;
  heightMm: number;
  tariffNumber: string;
  serialPlace: string;
  serialExample: string;
  serialPattern: string | null;
  serialRule: SerialRule;
  battery: BatteryKind;
  batteryWh: number | null;
  isMainsPowered: boolean;
  isListed: boolean;
};

export type RepairData = {
  name: string;
  summary: string;
  /** As the workshop keeps its prices, minor units. */
  priceMinor: number;
  taxCategory: TaxCategory;
  taxRateBps: number;
  minutes: number;
  workingDays: number;
  symptoms: string[];
  /** Name of the policy. */
  policy: string;
  /** Parts usually needed, by code. */
  parts: PartNeed[];
  isListed: boolean;
};

/** What is in the catalogue, found by its address. */
export type KnownFamily = { id: string; slug: string; data: FamilyData };
export type KnownModel = { id: string; slug: string; familySlug: string; data: ModelData };
export type KnownRepair = { id: string; slug: string; modelSlug: string; data: RepairData };
export type KnownCatalogue = {
  families: readonly KnownFamily[];
  models: readonly KnownModel[];
  repairs: readonly KnownRepair[];
};

const yesNo = (is: boolean) => (is ? 'yes' : 'no');

/** The cells of a family, by column. */
export function familyCells(data: FamilyData) {
  return { family: data.name, familyPlace: String(data.position) } satisfies Partial<Cells>;
}

/** The cells of a model, by column, without its address and its family. */
export function modelCells(data: ModelData) {
  return {
    maker: data.maker,
    model: data.name,
    aliases: joinEntries(data.aliases),
    accessories: joinEntries(data.accessories),
    weight: String(data.weightGrams),
    length: String(data.lengthMm),
    width: String(data.widthMm),
    height: String(data.heightMm),
    tariffNumber: data.tariffNumber,
    serialPlace: data.serialPlace,
    serialExample: data.serialExample,
    serialPattern: data.serialPattern ?? '',
    serialRule: data.serialRule,
    battery: data.battery,
    batteryWh: data.batteryWh === null ? '' : String(data.batteryWh),
    mains: yesNo(data.isMainsPowered),
    modelListed: yesNo(data.isListed),
  } satisfies Partial<Cells>;
}

/** The cells of a repair, by column, without its address. */
export function repairCells(data: RepairData, { currency }: ListSettings) {
  return {
    repair: data.name,
    summary: data.summary,
    price: decimalText(data.priceMinor, currency),
    currency,
    tax: data.taxCategory,
    taxRate: percentText(data.taxRateBps),
    minutes: String(data.minutes),
    workingDays: String(data.workingDays),
    symptoms: joinEntries(data.symptoms),
    policy: data.policy,
    parts: joinEntries(data.parts.map(partEntry)),
    repairListed: yesNo(data.isListed),
  } satisfies Partial<Cells>;
}

/**
 * The whole catalogue as rows, in the order given: one for each repair with its model and family, one for a model without
 * repairs, one for a family without models.
 */
export function listRows(known: KnownCatalogue, settings: ListSettings): Cells[] {
  const modelsOf = groupBy(known.models, (model) => model.familySlug);
  const repairsOf = groupBy(known.repairs, (repair) => repair.modelSlug);
  return known.families.flatMap((family) => {
    const start = { ...emptyCells(), familyAddress: family.slug, ...familyCells(family.data) };
    const models = modelsOf.get(family.slug) ?? [];
    if (models.length === 0) return [start];
    return models.flatMap((model) => {
      const middle = { ...start, modelAddress: model.slug, ...modelCells(model.data) };
      const repairs = repairsOf.get(model.slug) ?? [];
      if (repairs.length === 0) return [middle];
      return repairs.map((repair) => ({
        ...middle,
        repairAddress: repair.slug,
        ...repairCells(repair.data, settings),
      }));
    });
  });
}

function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group) group.push(item);
    else groups.set(keyOf(item), [item]);
  }
  return groups;
}
