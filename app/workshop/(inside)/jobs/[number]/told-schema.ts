import { z } from 'zod';
import { countedField, seenAmount } from '@/app/ui/forms/counted-field';
import { day, isDay } from '@/lib/calendar/day';
import { TOLD_BY } from '@/lib/jobs/rules/told';
import { TOLD_ANSWERS } from '@/lib/jobs/rules/told-answers';
import { neededText } from '@/lib/jobs/rules/typed-text';

export const toldForm = z.object({
  answer: z.enum(TOLD_ANSWERS, { error: 'Choose what they told us' }),
  how: z.enum(TOLD_BY, { error: 'Choose how they told us' }),
  on: z
    .string({ error: 'Enter the day they told us' })
    .refine(isDay, 'Enter the day they told us')
    .transform((text) => day(text)),
  words: neededText('what they said', 1000),
  /** of the price that waits, or that was declined; absent where none does */
  revision: countedField.optional(),
  /** what the form said a withdrawal would come to, minor units */
  shownOwed: seenAmount.optional(),
  /** the last message of the customer that waited beside the form; '' where none did */
  seen: z.uuid().or(z.literal('')).default(''),
});
