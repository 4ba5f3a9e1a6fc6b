import { z } from 'zod';
import { seenAmount } from '@/app/ui/forms/counted-field';

export const creditForm = z.object({
  choice: z.enum(['everything', 'lines'], 'Choose what to take off'),
  reason: z.string('Say why').trim().min(1, 'Say why').max(500, 'Keep this to 500 characters'),
  /** what the form said was left of the invoice, minor units */
  left: seenAmount,
  formKey: z.uuid().optional(),
});
