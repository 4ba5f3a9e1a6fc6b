import { z } from 'zod';

/** Text that has to be typed, without the space around it, of `max` characters at most; `missing` is said where there is none. */
export const typedText = (missing: string, max: number) =>
  z.string(missing).trim().min(1, missing).max(max, `Keep this to ${max} characters`);

/**
 * The same, where what is missing is to be entered; `what` ends "Enter …".
 *
 * neededText('the carrier', 80).parse(' Harbour Parcels ') -> 'Harbour Parcels'
 */
export const neededText = (what: string, max: number) => typedText(`Enter ${what}`, max);

/** Text that may be left out, which is then ''. */
export const optionalText = (max: number) =>
  z.string().trim().max(max, `Keep this to ${max} characters`).optional().default('');
