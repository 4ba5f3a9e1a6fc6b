import { z } from 'zod';
import { SETTLED_BY } from '@/lib/jobs/rules/settled';
import { optionalText } from '@/lib/jobs/rules/typed-text';

/** The last message of the customer that the form was drawn under, and how it stops waiting. */
export const settleForm = z
  .object({ message: z.uuid(), how: z.enum(SETTLED_BY), note: optionalText(1000) })
  .refine(({ how, note }) => how === 'no-answer-needed' || note !== '', {
    path: ['note'],
    message: 'Enter how it was answered',
  });
