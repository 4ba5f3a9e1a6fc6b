import { z } from 'zod';

export const creditForm = z.object({
  choice: z.enum(['everything', 'lines'], 'Choose what to take off'),
  reason: z.string('Say why').trim().min(1, 'Say why').max(500, 'Keep this to 500 characters'),
  formKey: z.uuid().optional(),
});
