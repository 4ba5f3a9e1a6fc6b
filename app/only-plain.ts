import { isKept } from '@/lib/numbers/column';
import { nothingHere } from './nothing-here';

/**
 * Ends as "nothing here" a form whose bound parts are not each a text.
 *
 * The page bound a number of a job or an id, but what arrives was sent by a browser and may be anything. The database
 * would read an object as a filter ({ startsWith: 'W' } fits every certificate), so nobody who knows no number could find
 * one, and nothing at all as an error. Only a forged request gets here: what it asks for does not exist, and our log is
 * not filled with its errors.
 */
export function onlyPlain(...bound: readonly string[]): void {
  if (!bound.every(isText)) nothingHere();
}

/** The same where a page binds nothing for what is new. */
export function onlyPlainOrNew(bound: string | null): void {
  if (bound !== null && !isText(bound)) nothingHere();
}

function isText(part: unknown): boolean {
  return typeof part === 'string';
}

/** The same for a bound version, revision or place: whole numbers from 0 that a column can hold, and nothing else. */
export function onlyCounts(...bound: readonly unknown[]): void {
  const fits = (part: unknown) => typeof part === 'number' && isKept(part) && part >= 0;
  if (!bound.every(fits)) nothingHere();
}
