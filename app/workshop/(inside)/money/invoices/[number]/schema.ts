import { z } from 'zod';
import { seenAmount } from '@/app/ui/forms/counted-field';
import { typedText } from '@/lib/jobs/rules/typed-text';

export const creditForm = z.object({
  choice: z.enum(['everything', 'lines'], 'Choose what to take off'),
  reason: typedText('Say why', 500),
  /** what the form said was left of the invoice, minor units */
  left: seenAmount,
  formKey: z.uuid().optional(),
});
