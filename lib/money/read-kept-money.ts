import { LARGEST_KEPT } from '@/lib/numbers/column';
import { decimalText } from './amount';
import { type MoneyReading, readMoney } from './read-money';

/**
 * Reads a typed amount that will be kept: as readMoney does, and an amount beyond what a column keeps, 2,147,483,647 minor
 * units or 21,474,836.47 in pounds, is 'range' too; `most` is a lower limit in minor units. Throws on an unknown currency.
 *
 * readKeptMoney('14.50', 'GBP') -> { ok: true, minor: 1450 }; '30000000' in GBP -> { ok: false, reason: 'range' }
 */
export function readKeptMoney(text: string, currency: string, most: number = LARGEST_KEPT): MoneyReading {
  const reading = readMoney(text, currency);
  return reading.ok && Math.abs(reading.minor) > most ? { ok: false, reason: 'range' } : reading;
}

/**
 * What to tell whoever typed an amount that is not kept: the largest there may be where it was too large, and otherwise the
 * sentence of the field. keptMoneySentence('range', 'GBP', 'Enter the amount like 24.00') -> 'Enter 21474836.47 or less'
 */
export function keptMoneySentence(
  reason: Extract<MoneyReading, { ok: false }>['reason'],
  currency: string,
  otherwise: string,
  most: number = LARGEST_KEPT,
): string {
  return reason === 'range' ? `Enter ${decimalText(most, currency)} or less` : otherwise;
}
