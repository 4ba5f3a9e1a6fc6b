/**
 * Amounts of money. Glossary:
 * - minor unit: the smallest unit of a currency, a penny or a cent; every amount is a whole number of them.
 * - exponent: how many decimals the currency is written with (ISO 4217).
 * - half up: a half rounds away from zero, 0.5 to 1 and -0.5 to -1.
 */
import { exponentOf } from './currency';

const formatters = new Map<string, Intl.NumberFormat>();

/** An amount for reading: 1450 GBP is '£14.50' in en-GB, 1450 JPY is 'JP¥1,450'. Refuses anything but a safe integer. */
export function formatMoney(minor: number, currency: string, locale: string): string {
  const key = `${locale}|${currency}`;
  let shown = formatters.get(key);
  if (!shown) {
    const digits = exponentOf(currency);
    const options = {
      style: 'currency',
      currency,
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
    } as const;
    shown = new Intl.NumberFormat(locale, options);
    formatters.set(key, shown);
  }
  return shown.format(decimalText(minor, currency));
}

/** An amount as a plain decimal: -1450 EUR is '-14.50', 1450 JPY is '1450'. For files and forms, not for prose. */
export function decimalText(minor: number, currency: string): `${number}` {
  const whole = requireInteger(minor);
  const exponent = exponentOf(currency);
  const digits = String(Math.abs(whole)).padStart(exponent + 1, '0');
  const sign = whole < 0 ? '-' : '';
  const point = digits.length - exponent;
  const text =
    exponent === 0 ? `${sign}${digits}` : `${sign}${digits.slice(0, point)}.${digits.slice(point)}`;
  if (!isDecimal(text)) throw new RangeError(`Not an amount: ${minor}`);
  return text;
}

function isDecimal(text: string): text is `${number}` {
  return /^-?\d+(?:\.\d+)?$/.test(text);
}

function requireInteger(value: number): number {
  if (!Number.isSafeInteger(value))
    throw new RangeError(`An amount is a whole number of minor units, not ${value}`);
  return value;
}

/** The sum of amounts; refuses fractions and results past the safe integers. */
export function safeSum(amounts: readonly number[]): number {
  return amounts.reduce((sum, amount) => requireInteger(sum + requireInteger(amount)), 0);
}

/**
 * amount x numerator / denominator in whole minor units, rounded half up (away from zero) once and without floating point:
 * roundedShare(146050, 2500, 10000) is 36513; 90 minutes of labour at 4800 an hour are roundedShare(4800, 90, 60) = 7200.
 * Refuses fractions and a denominator below 1.
 */
export function roundedShare(amount: number, numerator: number, denominator: number): number {
  if (denominator < 1) throw new RangeError(`Not a denominator: ${denominator}`);
  const product = BigInt(requireInteger(amount)) * BigInt(requireInteger(numerator));
  const divisor = BigInt(requireInteger(denominator));
  const magnitude = product < 0n ? -product : product;
  const rounded = Number((2n * magnitude + divisor) / (2n * divisor));
  return requireInteger(product < 0n && rounded !== 0 ? -rounded : rounded);
}

export { type MoneyReading, readMoney } from './read-money';
