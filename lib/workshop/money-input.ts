import { z } from 'zod';
import { foldIban, isBic, isIban } from '@/lib/invoices/rules/bank';
import { PAY_LINK_SENTENCES, payLinkProblem } from '@/lib/invoices/rules/pay-link';
import { isCurrency } from '@/lib/money/currency';
import { keptMoneySentence, readKeptMoney } from '@/lib/money/read-kept-money';
import type { MoneyReading } from '@/lib/money/read-money';
import { WITHDRAWAL_RULES } from '@/lib/quotes/rules/withdrawal';
import { line, longText, optionalLine, wholeNumber } from './input-parts';

const FEES = ['returnFee', 'inspectionFee', 'labourRate'] as const;

export const moneyInput = z
  .object({
    currency: z.string('Choose a currency').refine(isCurrency, 'Choose a currency'),
    pricesIncludeTax: z
      .enum(['yes', 'no'], 'Choose how prices are kept')
      .transform((answer) => answer === 'yes'),
    taxName: line('Enter what the tax is called, like VAT').pipe(
      z.string().max(20, 'Use 20 characters or fewer'),
    ),
    taxNumber: optionalLine,
    taxExemptReason: optionalLine,
    returnFee: z.string('Enter the return fee, 0 for none'),
    inspectionFee: z.string('Enter the inspection fee, 0 for none'),
    labourRate: z.string('Enter what an hour at the bench costs you, 0 if you do not know'),
    isInspectionFeeTakenOff: z
      .enum(['yes', 'no'], 'Choose what happens to the inspection fee')
      .transform((answer) => answer === 'yes'),
    approvalDays: wholeNumber('Enter how many days a price holds', 30, 365),
    remindDays: wholeNumber('Enter how many days before the end a reminder goes out', 1, 60),
    dueDays: wholeNumber('Enter within how many days an invoice is paid', 0, 180),
    // EPC069-12 and bank forms hold a name of 70 characters.
    bankHolder: z.string().trim().max(70, 'Use 70 characters or fewer').default(''),
    iban: z
      .string()
      .default('')
      .transform(foldIban)
      .refine((text) => text === '' || isIban(text), 'One character of this IBAN looks wrong. Check it'),
    bic: z
      .string()
      .default('')
      .transform((text) => text.replace(/\s+/g, '').toUpperCase())
      .refine((text) => text === '' || isBic(text), 'A BIC has 8 or 11 letters and digits'),
    payLink: z.string().trim().max(1000, 'Use 1,000 characters or fewer').default(''),
    withdrawalRule: z.enum(WITHDRAWAL_RULES, 'Choose which right to withdraw you give'),
    replacementText: longText.pipe(z.string().max(500, 'Use 500 characters or fewer')),
  })
  .superRefine(({ payLink, remindDays, approvalDays }, context) => {
    const problem = payLink === '' ? null : payLinkProblem(payLink);
    if (problem)
      context.addIssue({ code: 'custom', path: ['payLink'], message: PAY_LINK_SENTENCES[problem] });
    if (remindDays >= approvalDays)
      context.addIssue({
        code: 'custom',
        path: ['remindDays'],
        message: 'The reminder must come before the price ends, and after it was sent',
      });
  })
  .transform(({ returnFee, inspectionFee, labourRate, ...rest }, context) => {
    const typed = { returnFee, inspectionFee, labourRate };
    const read = FEES.map((field) => {
      // The form fills in 0.00, which is nothing in a currency without decimals too.
      const reading = readKeptMoney(typed[field].replace(/^0[.,]0+$/, '0'), rest.currency);
      const problem = problemOf(reading, rest.currency);
      if (problem) context.addIssue({ code: 'custom', path: [field], message: problem });
      return reading.ok ? reading.minor : 0;
    });
    const [returnFeeMinor = 0, inspectionFeeMinor = 0, labourRateMinor = 0] = read;
    return { ...rest, returnFeeMinor, inspectionFeeMinor, labourRateMinor };
  });

function problemOf(reading: MoneyReading, currency: string): string | null {
  if (reading.ok) return reading.minor < 0 ? 'Enter an amount that is not below zero' : null;
  const otherwise =
    reading.reason === 'decimals'
      ? 'This has more decimals than the currency'
      : 'Enter an amount, like 12.50';
  return keptMoneySentence(reading.reason, currency, otherwise);
}
