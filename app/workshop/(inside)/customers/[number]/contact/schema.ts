import { z } from 'zod';
import { customerAnswers } from '@/lib/jobs/rules/address';

export const contactForm = customerAnswers.extend({ newLink: z.literal('yes').optional() });

/** Who asked for a price has told no postal address yet. */
export const askerForm = contactForm.pick({ name: true, email: true, phone: true, newLink: true });
