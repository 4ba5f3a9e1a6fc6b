import { z } from 'zod';
import { countedField } from '@/app/ui/forms/counted-field';

export const placeSchema = z.object({
  position: countedField,
  move: z.enum(['up', 'down', 'off']),
});

export const readySchema = z.object({
  ready: z.string('Choose a set of checks').max(60, 'Choose a set of checks'),
});
