import { z } from 'zod';
import { addressAnswers } from '@/lib/jobs/rules/address';
import { parcelAnswers, unitAnswers } from '@/lib/jobs/rules/booking';
import { optionalText } from '@/lib/jobs/rules/typed-text';
import { isOther } from '@/lib/warranty/rules/standing';

const asked = unitAnswers.extend({
  symptom: z
    .string({ error: 'Choose what it does, or “Something else”' })
    .max(200, 'Choose one of the answers'),
  details: optionalText(2000),
});

/** A fault that is on no list has to be told in words: they are all that the bench has of it. */
function describedIfOther(
  { symptom, details }: { symptom: string; details: string },
  context: z.RefinementCtx,
): void {
  if (isOther(symptom) && details === '')
    context.addIssue({ code: 'custom', path: ['details'], message: 'Tell us in a few words what it does' });
}

export const askForm = asked.superRefine(describedIfOther);

export const openForm = asked
  .extend(addressAnswers.shape)
  .extend({
    battery: z.string({ error: 'Choose the answer that fits the battery' }).max(40),
    data: parcelAnswers.shape.data,
  })
  .superRefine(describedIfOther);
