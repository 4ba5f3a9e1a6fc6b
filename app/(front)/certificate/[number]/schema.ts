import { z } from 'zod';
import { addressAnswers, unitAnswers } from '@/lib/jobs/rules/booking';

export const askForm = unitAnswers.extend({
  symptom: z
    .string({ error: 'Choose what it does, or “Something else”' })
    .max(200, 'Choose one of the answers'),
  details: z.string().trim().max(2000, 'Keep this to 2,000 characters').optional().default(''),
});

export const openForm = askForm.extend(addressAnswers.shape).extend({
  battery: z.string({ error: 'Choose the answer that fits the battery' }).max(40),
});
