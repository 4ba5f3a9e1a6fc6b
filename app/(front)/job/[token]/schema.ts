import { z } from 'zod';
import { countedField, seenAmount } from '@/app/ui/forms/counted-field';
import { neededText, optionalText, typedText } from '@/lib/jobs/rules/typed-text';

export const decisionForm = z.object({
  revision: countedField,
  decision: z.enum(['accepted', 'declined'], { error: 'Choose yes or no' }),
  /** the wish for an early start, ticked beside a yes */
  start: z.literal('yes').optional(),
  /** the terms, ticked beside the first yes of a job that the workshop opened */
  terms: z.literal('yes').optional(),
  /** the terms that were linked beside that box, by their key */
  shownTerms: z.string().max(60).optional(),
});

/** The yes after a no names the price that was declined. */
export const afterNoForm = decisionForm.omit({ decision: true });

export const messageForm = z.object({
  text: typedText('Write your message', 4000),
  formKey: z.uuid().optional(),
});

/** Empty takes a number off again that was wrong. */
export const parcelForm = z.object({
  reference: optionalText(60),
});

/** A press that depends on nothing the page showed. */
export const pressForm = z.object({});

export const withdrawForm = z.object({ shownOwed: seenAmount });

export const postageForm = z.object({
  amount: neededText('what it cost you', 20),
  to: neededText('where to send the money', 300),
});

export const contestForm = z.object({
  text: typedText('Tell us how you see it', 4000),
});
