import { z } from 'zod';

export const bounceForm = z.object({
  note: z
    .string('Copy what the other mail server said')
    .trim()
    .min(1, 'Copy what the other mail server said')
    .max(1000, 'Keep this to 1000 characters'),
});

export const toldForm = z.object({
  note: z
    .string('Say how they were told')
    .trim()
    .min(1, 'Say how they were told')
    .max(1000, 'Keep this to 1000 characters'),
});
