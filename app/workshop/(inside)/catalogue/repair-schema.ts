import { z } from 'zod';
import { storedTax } from '@/lib/catalogue/stored';
import { line, lines, money, wholeNumber, yesNo } from './fields';

/** A rate as people write it, in percent with up to two decimals: '20' and '5,5' are 2000 and 550. */
const taxRate = z
  .string('Enter the rate in percent, 0 for none')
  .trim()
  .regex(/^\d{1,2}([.,]\d{1,2})?$/, 'Enter the rate in percent, like 20 or 5.5')
  .transform((text) => {
    const [whole = '0', decimals = ''] = text.split(/[.,]/);
    return Number(whole) * 100 + Number(decimals.padEnd(2, '0'));
  });

export const repairSchema = (currency: string) =>
  z
    .object({
      name: line('Enter what is done, like USB-C socket replaced'),
      summary: line('Say in a sentence what the work is', 400),
      price: money(currency, 'Enter the price'),
      taxCategory: storedTax,
      taxRate,
      minutes: wholeNumber(1, 6000),
      workingDays: wholeNumber(1, 250),
      symptoms: lines(20).pipe(
        z.array(z.string()).min(1, 'Give at least one symptom: customers choose from them in a claim'),
      ),
      policyId: z.string('Choose a policy'),
      isListed: yesNo,
    })
    .transform(({ price, taxRate: taxRateBps, ...rest }) => ({ ...rest, priceMinor: price, taxRateBps }));
