import { z } from 'zod';

export const bounceForm = z.object({
  note: z
    .string('Copy what the other mail server said')
    .trim()
    .min(1, 'Copy what the other mail server said')
    .max(1000, 'Keep this to 1000 characters'),
});
