import { z } from 'zod';
import { addressAnswers } from '@/lib/jobs/rules/address';

export const lostForm = z.object({
  number: z.string().trim().max(1000, 'Keep this to 1,000 characters').optional().default(''),
  serial: z.string().trim().max(60, 'Keep this to 60 characters').optional().default(''),
  email: addressAnswers.shape.email,
});
