import { type MoneyReading, readMoney } from './read-money';

/** The largest amount that a column keeps, in minor units (PostgreSQL manual, Numeric Types: integer, four bytes). */
const LARGEST = 2_147_483_647;

/**
 * Reads a typed amount that will be kept: as readMoney does, and an amount beyond the column's 2,147,483,647 minor units,
 * 21,474,836.47 in pounds, is 'range' too. Throws on an unknown currency.
 *
 * readKeptMoney('14.50', 'GBP') -> { ok: true, minor: 1450 }; '30000000' in GBP -> { ok: false, reason: 'range' }
 */
export function readKeptMoney(text: string, currency: string): MoneyReading {
  const reading = readMoney(text, currency);
  return reading.ok && Math.abs(reading.minor) > LARGEST ? { ok: false, reason: 'range' } : reading;
}
