import { z } from 'zod';
import { seenAtField } from '@/app/ui/forms/seen-at-field';
import { optionalText } from '@/lib/jobs/rules/typed-text';
import { CARRIER_KINDS } from '@/lib/parcels/rules/carriers';
import { readCentimetres, readGrams, readKilograms } from '@/lib/parcels/rules/measures';
import { customsInput } from '@/lib/workshop/customs-input';
import { line, money, ticked, wholeNumber } from '../../catalogue/fields';

const measure = (read: (text: string) => number | null, problem: string) =>
  z
    .string(problem)
    .trim()
    .transform((typed, context) => {
      const value = read(typed);
      if (value === null) context.addIssue({ code: 'custom', message: problem });
      return value ?? 0;
    });

export const carrierSchema = (currency: string) =>
  z
    .object({
      name: line('Enter the carrier’s name', 80),
      kind: z.enum(CARRIER_KINDS, 'Choose how its parcels travel'),
      divisor: wholeNumber(1000, 20_000),
      wholeSides: ticked,
      step: measure(readGrams, 'Enter whole grams, like 500'),
      heaviest: measure(readKilograms, 'Enter kilograms, like 20 or 2.5'),
      longest: measure(readCentimetres, 'Enter centimetres, like 100'),
      valueUpTo: money(currency, 'Enter an amount, 0 for none'),
      daysHome: wholeNumber(1, 60),
      daysAbroad: wholeNumber(1, 60),
      tracking: optionalText(300),
      position: wholeNumber(0, 999),
      isUsed: ticked,
    })
    .transform(({ step, heaviest, longest, valueUpTo, ...rest }) => ({
      ...rest,
      stepGrams: step,
      maxGrams: heaviest,
      longestSideMm: longest,
      maxValueMinor: valueUpTo,
    }));

export const customsForm = customsInput.extend({ seenAt: seenAtField });
