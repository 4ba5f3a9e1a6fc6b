import { z } from 'zod';
import { line, optionalLine } from '../fields';

export const pinTableSchema = z.object({
  name: line('Give the connector a name', 60),
  source: optionalLine,
  text: z
    .string('Paste the pins, one a line')
    .max(8000, 'Use 8,000 characters or fewer')
    .refine((text) => text.trim() !== '', 'Paste the pins, one a line'),
});
