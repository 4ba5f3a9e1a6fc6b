import { z } from 'zod';
import { countedField } from '@/app/ui/forms/counted-field';
import { typedText } from '@/lib/jobs/rules/typed-text';

export const answerForm = z.object({
  text: typedText('Write your answer', 4000),
  formKey: z.uuid().optional(),
});

/** The yes after a no names the price that was declined. */
export const afterNoForm = z.object({ revision: countedField });

export const decisionForm = z.object({
  revision: countedField,
  decision: z.enum(['accepted', 'declined'], { error: 'Choose yes or no' }),
});
