import { z } from 'zod';
import { isDay } from '@/lib/calendar/day';
import { DECISIONS } from '@/lib/jobs/rules/unclaimed';

export const decisionForm = z.object({
  decision: z.enum(DECISIONS, 'Choose what becomes of the unit'),
  note: z
    .string('Write down why, in words the customer may read')
    .trim()
    .min(1, 'Write down why, in words the customer may read')
    .max(1000, 'Keep this to 1000 characters'),
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
  reason: z
    .string('Tell the customer why')
    .trim()
    .min(1, 'Tell the customer why')
    .max(500, 'Keep this to 500 characters'),
});
