import { keptMoneySentence, readKeptMoney } from '@/lib/money/read-kept-money';
import type { TaxCategory } from '@/lib/money/tax';
import { isSerialPattern } from '@/lib/numbers/serial';
import { readSerialRule } from '@/lib/numbers/serial-rule';
import { BATTERY_KINDS } from '@/lib/parcels/rules/battery';
import { type CellTell, cellReader, storedName } from './cell-reader';
import { type PartNeed, readPartEntry, splitEntries } from './list-cells';
import type { Cells, ColumnKey, ListSettings } from './list-columns';
import type { FamilyData, ModelData, RepairData } from './list-data';
import { LIMITS } from './list-limits';
import { readPercent } from './percent';
import { missingSide, type SIDES } from './size';
import { readTariffNumber } from './tariff-number';
import { taxRateProblem } from './tax-of-repair';

export type Tell = CellTell<ColumnKey>;

/** What a row may refer to, by name and by code; capitals do not matter, and the stored spelling is kept. */
export type Referred = { policies: readonly string[]; parts: readonly string[] };

/** The family that a row says; null, and every fault told, where a cell cannot be read. */
export function readFamily(cells: Cells, tell: Tell): FamilyData | null {
  const read = cellReader(cells, tell);
  const data = {
    name: read.line('family', 'Enter the name of the family'),
    position: read.whole('familyPlace', 0, LIMITS.place),
  };
  return read.isSound() ? data : null;
}

/** The model that a row says; null, and every fault told, where a cell cannot be read. */
export function readModel(cells: Cells, tell: Tell): ModelData | null {
  const read = cellReader(cells, tell);
  const battery = read.oneOf('battery', BATTERY_KINDS);
  const data: ModelData = {
    maker: read.line('maker', 'Enter the maker'),
    name: read.line('model', 'Enter the name of the model'),
    aliases: read.entries('aliases'),
    accessories: read.entries('accessories'),
    weightGrams: read.whole('weight', 0, LIMITS.weightGrams, 0),
    lengthMm: read.whole('length', 0, LIMITS.sideMm, 0),
    widthMm: read.whole('width', 0, LIMITS.sideMm, 0),
    heightMm: read.whole('height', 0, LIMITS.sideMm, 0),
    tariffNumber: tariffNumber(cells, read.wrong),
    serialPlace: read.optional('serialPlace'),
    serialExample: read.optional('serialExample'),
    serialPattern: serialPattern(cells, read.wrong),
    serialRule: serialRule(cells, read.wrong),
    battery: battery ?? 'none',
    batteryWh: wattHours(cells, battery, read.wrong),
    isMainsPowered: read.yesNo('mains'),
    isListed: read.yesNo('modelListed'),
  };
  const side = missingSide(data);
  if (side) read.wrong(SIDE_COLUMNS[side], 'Give all three sides, or 0 for each');
  return read.isSound() ? data : null;
}

const SIDE_COLUMNS = { lengthMm: 'length', widthMm: 'width', heightMm: 'height' } as const satisfies Record<
  (typeof SIDES)[number],
  ColumnKey
>;

/** The repair that a row says; null, and every fault told, where a cell cannot be read or names what is not there. */
export function readRepair(
  cells: Cells,
  known: Referred,
  settings: ListSettings,
  tell: Tell,
): RepairData | null {
  const read = cellReader(cells, tell);
  const taxCategory = read.oneOf('tax', ['S', 'Z', 'E', 'O']);
  if (cells.currency.toUpperCase() !== settings.currency)
    read.wrong('currency', `Prices of this workshop are in ${settings.currency}`);
  const data: RepairData = {
    name: read.line('repair', 'Enter what is done, like USB-C socket replaced'),
    summary: read.line('summary', 'Say in a sentence what the work is', LIMITS.summary),
    priceMinor: price(cells, settings, read.wrong),
    taxCategory: taxCategory ?? 'S',
    taxRateBps: taxRate(cells, taxCategory, read.wrong),
    minutes: read.whole('minutes', 1, LIMITS.minutes),
    workingDays: read.whole('workingDays', 1, LIMITS.workingDays),
    symptoms: read.entries('symptoms'),
    policy: policy(cells, known.policies, read.wrong),
    parts: parts(cells, known.parts, read.wrong),
    isListed: read.yesNo('repairListed'),
  };
  if (data.symptoms.length === 0) read.wrong('symptoms', 'Give at least one symptom');
  return read.isSound() ? data : null;
}

function tariffNumber({ tariffNumber: text }: Cells, wrong: Tell): string {
  const digits = readTariffNumber(text);
  if (digits === null) wrong('tariffNumber', 'Give 6 to 12 digits, or nothing');
  return digits ?? '';
}

function serialPattern({ serialPattern: text }: Cells, wrong: Tell): string | null {
  if (text === '') return null;
  if (!isSerialPattern(text))
    wrong('serialPattern', 'This pattern cannot be used: letters, \\d{4} for four digits, and little else');
  return text;
}

function serialRule({ serialRule: text }: Cells, wrong: Tell) {
  const rule = readSerialRule(text.toLowerCase());
  if (text !== '' && rule !== text.toLowerCase())
    wrong('serialRule', 'Write none, luhn, imei, gs1, mod-11-2, mod-37-2, mod-97-10, mod-11-10 or mod-37-36');
  return rule;
}

function wattHours({ batteryWh: text }: Cells, battery: string | null, wrong: Tell): number | null {
  if (battery !== null && battery !== 'lithium-ion' && text !== '') {
    wrong('batteryWh', 'Only a lithium-ion battery has its watt-hours given');
    return null;
  }
  if (text === '') {
    if (battery === 'lithium-ion') wrong('batteryWh', 'Give the watt-hours; without them nobody may post it');
    return null;
  }
  const size = Number(text.replace(',', '.'));
  if (!/^\d{1,4}([.,]\d{1,4})?$/.test(text) || size <= 0)
    wrong('batteryWh', 'Enter watt-hours above zero, like 9.25');
  return size;
}

function price({ price: text }: Cells, { currency }: ListSettings, wrong: Tell): number {
  const reading = readKeptMoney(text, currency, LIMITS.priceMinor);
  if (reading.ok && reading.minor >= 0) return reading.minor;
  const reason = reading.ok ? 'format' : reading.reason;
  wrong('price', keptMoneySentence(reason, currency, 'Enter an amount, like 12.50', LIMITS.priceMinor));
  return 0;
}

function taxRate({ taxRate: text }: Cells, category: TaxCategory | null, wrong: Tell): number {
  if (text === '' && category !== null && category !== 'S') return 0;
  const rateBps = readPercent(text);
  if (rateBps === null) wrong('taxRate', 'Enter the rate in percent, like 20 or 5.5');
  else {
    const problem = category === null ? null : taxRateProblem(category, rateBps);
    if (problem) wrong('taxRate', problem);
  }
  return rateBps ?? 0;
}

function policy({ policy: text }: Cells, policies: readonly string[], wrong: Tell): string {
  const found = storedName(text, policies);
  if (found === null) wrong('policy', text === '' ? 'Name a policy' : `There is no policy called ${text}`);
  return found ?? '';
}

function parts({ parts: text }: Cells, codes: readonly string[], wrong: Tell): PartNeed[] {
  const needs = new Map<string, PartNeed>();
  for (const entry of splitEntries(text)) {
    // A code that itself ends like a number of pieces is taken as it stands.
    const whole = storedName(entry, codes);
    const need = whole === null ? readPartEntry(entry) : { code: whole, quantity: 1 };
    const code = storedName(need.code, codes);
    if (code === null) wrong('parts', `There is no part with the code ${need.code}`);
    else if (needs.has(code)) wrong('parts', `${code} stands here twice`);
    else if (need.quantity < 1 || need.quantity > LIMITS.pieces)
      wrong('parts', `Give 1 to ${LIMITS.pieces} pieces of ${code}`);
    else needs.set(code, { code, quantity: need.quantity });
  }
  return [...needs.values()].sort((a, b) => (a.code < b.code ? -1 : 1));
}
