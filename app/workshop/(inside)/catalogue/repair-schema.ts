import { z } from 'zod';
import { LIMITS } from '@/lib/catalogue/rules/list-limits';
import { readPercent } from '@/lib/catalogue/rules/percent';
import { storedTax } from '@/lib/catalogue/stored';
import { line, lines, money, wholeNumber, yesNo } from './fields';

/** A rate of tax in percent, as basis points. */
const taxRate = z
  .string('Enter the rate in percent, 0 for none')
  .trim()
  .min(1, 'Enter the rate in percent, 0 for none')
  .transform((text, context) => {
    const rateBps = readPercent(text);
    if (rateBps !== null) return rateBps;
    context.addIssue({ code: 'custom', message: 'Enter the rate in percent, like 20 or 5.5' });
    return z.NEVER;
  });

export const repairSchema = (currency: string) =>
  z
    .object({
      name: line('Enter what is done, like USB-C socket replaced'),
      summary: line('Say in a sentence what the work is', LIMITS.summary),
      price: money(currency, 'Enter the price'),
      priceKind: z.string('Load this page again').max(30, 'Load this page again'),
      taxCategory: z.enum(storedTax.options, 'Choose the tax'),
      taxRate,
      minutes: wholeNumber(1, LIMITS.minutes),
      workingDays: wholeNumber(1, LIMITS.workingDays),
      symptoms: lines(LIMITS.entries).pipe(
        z.array(z.string()).min(1, 'Give at least one symptom: customers choose from them in a claim'),
      ),
      policyId: z.uuid('Choose a policy'),
      isListed: yesNo,
    })
    .transform(({ price, taxRate: taxRateBps, ...rest }) => ({ ...rest, priceMinor: price, taxRateBps }));
