import { z } from 'zod';
import { seenAtField } from '@/app/ui/forms/seen-at-field';
import { staffInput } from '@/lib/people/staff-input';

export const changeInput = staffInput.extend({
  isActive: z.enum(['yes', 'no']).transform((answer) => answer === 'yes'),
});

export const resetInput = z.object({ secondStepOff: z.literal('yes').optional() });

export const askedForm = z.object({
  asked: z.enum(['yes', 'no'], 'Choose one').transform((answer) => answer === 'yes'),
  seenAt: seenAtField,
});
