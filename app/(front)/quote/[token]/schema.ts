import { z } from 'zod';
import { countedField } from '@/app/ui/forms/counted-field';

export const answerForm = z.object({
  text: z
    .string({ error: 'Write your answer' })
    .trim()
    .min(1, 'Write your answer')
    .max(4000, 'Keep this to 4,000 characters'),
  formKey: z.uuid().optional(),
});

/** The yes after a no names the price that was declined. */
export const afterNoForm = z.object({ revision: countedField });

export const decisionForm = z.object({
  revision: countedField,
  decision: z.enum(['accepted', 'declined'], { error: 'Choose yes or no' }),
});
