/** Heaviest and longest that a form takes; beyond it somebody mistook the unit. */
const MOST_GRAMS = 100_000;
const MOST_MILLIMETRES = 3000;

/**
 * A weight in grams as typed, 0 < weight <= 100 kg; null for anything else. readGrams('1 250') -> 1250
 */
export function readGrams(text: string): number | null {
  const bare = text.replace(/[\s  ]/g, '');
  if (!/^\d{1,6}$/.test(bare)) return null;
  const grams = Number(bare);
  return grams >= 1 && grams <= MOST_GRAMS ? grams : null;
}

/** A weight in kilograms as typed, with a point or a comma, in whole grams; null for anything else. readKilograms('2,5') -> 2500 */
export function readKilograms(text: string): number | null {
  const grams = scaled(text, 3);
  return grams !== null && grams >= 1 && grams <= MOST_GRAMS ? grams : null;
}

/** A length in centimetres as typed, with at most one decimal, in whole millimetres; null for anything else. readCentimetres('30.5') -> 305 */
export function readCentimetres(text: string): number | null {
  const millimetres = scaled(text, 1);
  return millimetres !== null && millimetres >= 1 && millimetres <= MOST_MILLIMETRES ? millimetres : null;
}

/** A decimal text as a whole number of its smallest decimals, without floating point. */
function scaled(text: string, decimals: number): number | null {
  const parts = /^(\d{1,4})(?:[.,](\d+))?$/.exec(text.trim());
  const [, whole = '', fraction = ''] = parts ?? [];
  if (!parts || fraction.length > decimals) return null;
  return Number(whole + fraction.padEnd(decimals, '0'));
}

/** Millimetres as a person types centimetres: 305 -> '30.5', 300 -> '30'. */
export function centimetreText(millimetres: number): string {
  return String(millimetres / 10);
}

/** Grams as kilograms for people: 14500 -> '14.5 kg', 1000 -> '1 kg'. At most three decimals. */
export function kilogramText(grams: number): string {
  return `${Number((grams / 1000).toFixed(3))} kg`;
}
