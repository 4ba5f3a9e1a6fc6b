import { z } from 'zod';

/**
 * Text that has to be typed, without the space around it, of `max` characters at most; `what` ends "Enter …".
 *
 * neededText('the carrier', 80).parse(' Harbour Parcels ') -> 'Harbour Parcels'
 */
export const neededText = (what: string, max: number) =>
  z
    .string({ error: `Enter ${what}` })
    .trim()
    .min(1, `Enter ${what}`)
    .max(max, `Keep this to ${max} characters`);

/** The same of text that may be left out, which is then ''. */
export const optionalText = (max: number) =>
  z.string().trim().max(max, `Keep this to ${max} characters`).optional().default('');
