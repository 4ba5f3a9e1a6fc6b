import { z } from 'zod';
import { typedText } from '@/lib/jobs/rules/typed-text';
import { LARGEST_KEPT } from '@/lib/numbers/column';

export const stopLotForm = z.object({
  text: typedText('Write why it is stopped', 4000),
  formKey: z.uuid(),
});

/** The recalls in force that the person saw, their ids parted by commas. */
const seenRecalls = z
  .string()
  .max(4000)
  .transform((text) => text.split(','))
  .pipe(z.array(z.uuid()));

export const liftQuietlyForm = z.object({
  text: typedText('Write why it was a mistake', 4000),
  recalls: seenRecalls,
});

export const recallForm = z.object({
  text: z
    .string('Write what the letter says')
    .trim()
    .min(20, 'Say what to do with the unit and how it is put right')
    .max(4000, 'Keep this to 4,000 characters'),
  letters: z.coerce.number().int().min(0).max(LARGEST_KEPT),
  formKey: z.uuid(),
  step: z.enum(['look', 'send']).optional(),
  /** the letter as it was looked at */
  seen: z
    .string()
    .trim()
    .max(5000)
    .optional()
    .transform((text) => text || undefined),
});

export const liftForm = recallForm.omit({ formKey: true }).extend({
  text: z
    .string('Write what the letter says')
    .trim()
    .min(20, 'Say that it was a mistake, and what holds now')
    .max(4000, 'Keep this to 4,000 characters'),
  recalls: seenRecalls,
});
