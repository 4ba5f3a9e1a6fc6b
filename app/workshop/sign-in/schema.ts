import { z } from 'zod';

export const signInSchema = z.object({
  email: z
    .string('Enter your e-mail address')
    .trim()
    .toLowerCase()
    .min(1, 'Enter your e-mail address')
    .max(254, 'This address is too long'),
  password: z.string('Enter your password').max(1000, 'This is longer than any password here'),
  /** A way back that is longer than any address is left out, since nobody typed it. */
  goTo: z.string().max(2000).optional().catch(undefined),
});
