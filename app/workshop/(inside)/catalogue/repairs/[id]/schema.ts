import { z } from 'zod';
import { LIMITS } from '@/lib/catalogue/rules/list-limits';
import { line, wholeNumber } from '../../fields';

export const partSchema = z.object({
  code: line('Enter the code of a part'),
  quantity: wholeNumber(1, LIMITS.pieces),
});
