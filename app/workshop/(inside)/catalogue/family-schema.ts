import { z } from 'zod';
import { line, wholeNumber } from './fields';

export const familySchema = z.object({
  name: line('Enter the name of the family'),
  position: wholeNumber(0, 999),
});
