import { z } from 'zod';
import { neededText, optionalText } from '@/lib/jobs/rules/typed-text';
import { LARGEST_KEPT } from '@/lib/numbers/column';

const wholeNumber = (what: string) =>
  z.coerce.number({ error: `Enter ${what} as a whole number` }).int(`Enter ${what} as a whole number`);

/** A press of a button alone. */
export const nothingForm = z.object({});
export const questionForm = z.object({ text: neededText('your question', 4000) });
export const messageForm = z.object({ text: neededText('your message', 4000) });
export const turnDownForm = z.object({
  text: neededText('the reason, in words the customer can follow', 2000),
});

export const priceForm = z.object({
  repairId: z.uuid('Choose the repair whose cover and check sheet the work gets'),
  takePrice: z.literal('yes').optional(),
  reason: neededText('what you found, in words the customer can follow', 2000),
  proposal: neededText('what you propose to do', 1000),
  workingDays: wholeNumber('the working days')
    .min(1, 'Give one working day or more')
    .max(250, 'That is more than a year'),
  /** how few and how many it may be is for the rules of a quote to say */
  validDays: wholeNumber('the days')
    .min(0, 'Enter the days as a whole number')
    .max(LARGEST_KEPT, 'Enter the days as a whole number'),
  note: optionalText(1000),
  customerAsked: z.literal('yes').optional(),
  /** what the button pressed asks for */
  press: z.enum(['send', 'sums']).default('send'),
});
export type PriceForm = z.output<typeof priceForm>;
