import { z } from 'zod';
import { staffInput } from '@/lib/people/staff-input';

export const changeInput = staffInput.extend({
  isActive: z.enum(['yes', 'no']).transform((answer) => answer === 'yes'),
});

export const resetInput = z.object({ secondStepOff: z.literal('yes').optional() });
