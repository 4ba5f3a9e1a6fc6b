import { z } from 'zod';
import { seenAtField } from '@/app/ui/forms/seen-at-field';
import { CARRIER_KINDS } from '@/lib/parcels/rules/carriers';
import { readCentimetres, readGrams, readKilograms } from '@/lib/parcels/rules/measures';
import { customsInput } from '@/lib/workshop/customs-input';

const wholeNumber = (low: number, high: number) =>
  z
    .string(`Enter a whole number from ${low} to ${high}`)
    .trim()
    .regex(/^\d{1,6}$/, `Enter a whole number from ${low} to ${high}`)
    .transform(Number)
    .pipe(z.number().min(low, `Enter ${low} or more`).max(high, `Enter ${high} or less`));

const measure = (read: (text: string) => number | null, problem: string) =>
  z
    .string(problem)
    .trim()
    .transform((typed, context) => {
      const value = read(typed);
      if (value === null) context.addIssue({ code: 'custom', message: problem });
      return value ?? 0;
    });

export const carrierForm = z
  .object({
    name: z
      .string('Enter the carrier’s name')
      .trim()
      .min(1, 'Enter the carrier’s name')
      .max(80, 'Keep this to 80 characters'),
    kind: z.enum(CARRIER_KINDS, 'Choose how its parcels travel'),
    divisor: wholeNumber(1000, 20_000),
    wholeSides: z.literal('yes').optional(),
    step: measure(readGrams, 'Enter whole grams, like 500'),
    heaviest: measure(readKilograms, 'Enter kilograms, like 20 or 2.5'),
    longest: measure(readCentimetres, 'Enter centimetres, like 100'),
    valueUpTo: z
      .string('Enter an amount, 0 for none')
      .trim()
      .min(1, 'Enter an amount, 0 for none')
      .max(20, 'Enter an amount, like 500.00'),
    daysHome: wholeNumber(1, 60),
    daysAbroad: wholeNumber(1, 60),
    tracking: z.string().trim().max(300, 'Keep this to 300 characters').optional().default(''),
    position: wholeNumber(0, 999),
    isUsed: z.literal('yes').optional(),
  })
  .transform(({ step, heaviest, longest, wholeSides, isUsed, ...rest }) => ({
    ...rest,
    stepGrams: step,
    maxGrams: heaviest,
    longestSideMm: longest,
    wholeSides: wholeSides === 'yes',
    isUsed: isUsed === 'yes',
  }));

export const customsForm = customsInput.extend({ seenAt: seenAtField });
