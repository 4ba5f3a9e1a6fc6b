import { z } from 'zod';
import { LIMITS } from '@/lib/catalogue/rules/list-limits';
import { line, wholeNumber } from './fields';

export const familySchema = z.object({
  name: line('Enter the name of the family'),
  position: wholeNumber(0, LIMITS.place),
});
