import { z } from 'zod';

export const passwordSchema = z.object({
  password: z.string('Enter your password').max(1000, 'This is longer than any password here'),
});

export const codeSchema = z.object({
  code: z.string('Enter the code that the app shows').max(20, 'The code has six digits'),
});

export const sessionSchema = z.object({ session: z.string().max(100) });
