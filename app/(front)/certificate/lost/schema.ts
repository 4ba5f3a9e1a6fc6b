import { z } from 'zod';
import { addressAnswers } from '@/lib/jobs/rules/address';
import { optionalText } from '@/lib/jobs/rules/typed-text';

export const lostForm = z.object({
  number: optionalText(1000),
  serial: optionalText(60),
  email: addressAnswers.shape.email,
});
