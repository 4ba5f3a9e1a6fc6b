import { z } from 'zod';
import { countedField } from '@/app/ui/forms/counted-field';
import { customerAnswers } from '@/lib/jobs/rules/address';

export const contactForm = customerAnswers.extend({
  version: countedField,
  newLink: z.literal('yes').optional(),
});

/** Who asked for a price has told no postal address yet. */
export const askerForm = contactForm.pick({
  name: true,
  email: true,
  phone: true,
  version: true,
  newLink: true,
});
