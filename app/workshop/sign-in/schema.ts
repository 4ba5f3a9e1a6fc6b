import { z } from 'zod';

export const signInSchema = z.object({
  email: z.string('Enter your e-mail address').trim().toLowerCase().max(254, 'This address is too long'),
  password: z.string('Enter your password'),
  goTo: z.string().optional(),
});
