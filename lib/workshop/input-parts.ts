import { z } from 'zod';

/** One line that must be filled in; `missing` is what the field says when it is not. */
export const line = (missing: string) =>
  z.string(missing).trim().min(1, missing).max(200, 'Use 200 characters or fewer');

export const optionalLine = z.string().trim().max(200, 'Use 200 characters or fewer').default('');

export const longText = z.string().trim().max(40_000, 'Use 40,000 characters or fewer').default('');

/** Text of several lines as a list, empty lines left out. */
export const lines = longText.transform((text) =>
  text
    .split('\n')
    .map((entry) => entry.trim())
    .filter(Boolean),
);

export const wholeNumber = (missing: string, low: number, high: number) =>
  z
    .string(missing)
    .trim()
    .regex(/^\d{1,6}$/, `Enter a whole number from ${low} to ${high}`)
    .transform(Number)
    .pipe(z.number().min(low, `Enter ${low} or more`).max(high, `Enter ${high} or less`));
