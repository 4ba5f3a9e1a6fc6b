import { z } from 'zod';
import { isDay } from '@/lib/calendar/day';
import { typedText } from '@/lib/jobs/rules/typed-text';
import { DECISIONS } from '@/lib/jobs/rules/unclaimed';

export const decisionForm = z.object({
  decision: z.enum(DECISIONS, 'Choose what becomes of the unit'),
  note: typedText('Write down why, in words the customer may read', 1000),
  until: z
    .string()
    .trim()
    .default('')
    .refine((text) => text === '' || isDay(text), 'Enter a date'),
  isToldOtherwise: z
    .string()
    .optional()
    .transform((text) => text === 'yes'),
});

export const promiseForm = z.object({
  to: z.string('Choose the new day').refine(isDay, 'Choose the new day'),
  reason: typedText('Tell the customer why', 500),
});
