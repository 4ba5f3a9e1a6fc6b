import { z } from 'zod';
import { LIMITS } from '@/lib/catalogue/rules/list-limits';
import { TERM_SENTENCE, TERM_UNIT_KEYS } from '@/lib/catalogue/rules/term-parts';
import { keptMoneySentence, readKeptMoney } from '@/lib/money/read-kept-money';

/** Pieces that the forms of the catalogue and of the parts list are made of. */

export const line = (missing: string, most: number = LIMITS.name) =>
  z.string(missing).trim().min(1, missing).max(most, `Use ${most} characters or fewer`);

export const optionalLine = z
  .string()
  .trim()
  .max(LIMITS.line, `Use ${LIMITS.line} characters or fewer`)
  .default('');

/** A text area with one entry a line; empty lines and repeats are dropped. */
export const lines = (most: number) =>
  z
    .string()
    .max(8000, 'Use 8,000 characters or fewer')
    .default('')
    .transform((text) => [...new Set(text.split('\n').map((entry) => entry.trim()))].filter(Boolean))
    .pipe(
      z
        .array(z.string().max(LIMITS.entry, `Keep each line to ${LIMITS.entry} characters`))
        .max(most, `Use ${most} lines or fewer`),
    );

export const wholeNumber = (low: number, high: number) =>
  z
    .string(`Enter a whole number from ${low} to ${high}`)
    .trim()
    .regex(/^\d{1,7}$/, `Enter a whole number from ${low} to ${high}`)
    .transform(Number)
    .pipe(z.number().min(low, `Enter ${low} or more`).max(high, `Enter ${high} or less`));

export const yesNo = z.enum(['yes', 'no'], 'Choose one').transform((answer) => answer === 'yes');

/** One box to tick; an empty one is not posted at all. */
export const ticked = z
  .literal('yes')
  .optional()
  .transform((answer) => answer === 'yes');

/** The number of a term as its form gives it, '' for none; whether it can be counted is for the rules to say. */
export const termCount = z.string().trim().toUpperCase().max(20, TERM_SENTENCE).default('');
export const termUnit = z.enum(TERM_UNIT_KEYS, TERM_SENTENCE).default('M');

/** An amount typed in the workshop's currency, as minor units, not below zero. */
export const money = (currency: string, missing: string) =>
  // A browser sends a field that was left empty as ''.
  z
    .string(missing)
    .trim()
    .min(1, missing)
    .transform((text, context) => {
      const reading = readKeptMoney(text, currency, LIMITS.priceMinor);
      if (reading.ok && reading.minor >= 0) return reading.minor;
      const reason = reading.ok ? 'format' : reading.reason;
      const message = keptMoneySentence(reason, currency, 'Enter an amount, like 12.50', LIMITS.priceMinor);
      context.addIssue({ code: 'custom', message });
      return z.NEVER;
    });
