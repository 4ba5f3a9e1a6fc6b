import { z } from 'zod';

export const removalForm = z.object({
  /** that cover which lives on can then be claimed only with the certificate in hand */
  cover: z.literal('yes', { error: 'Tick the box, or leave it' }).optional(),
});
