import { z } from 'zod';

const MOST_THINGS = 20;

export const serialField = z
  .string({ error: 'Enter the serial as it stands on the unit' })
  .trim()
  .max(60, 'Keep this to 60 characters')
  .regex(/[A-Za-z0-9]/, 'A serial has letters or digits. Enter it as it stands on the unit');

/** What came beside what was told, one thing to a line or with commas between them, each once. */
export const extraField = z
  .string()
  .max(2000, 'Keep this to 2,000 characters')
  .optional()
  .default('')
  .transform(listed)
  .refine((things) => things.length <= MOST_THINGS, `Name ${MOST_THINGS} things at most`)
  .refine((things) => things.every((thing) => thing.length <= 80), 'Keep each thing to 80 characters');

function listed(text: string): string[] {
  const things = text.split(/[\n,;]/).map((thing) => thing.trim());
  return [...new Set(things.filter((thing) => thing !== ''))];
}
