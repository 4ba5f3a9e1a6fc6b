import { z } from 'zod';
import { isDay } from '@/lib/calendar/day';
import { isCurrency } from '@/lib/money/currency';
import { type MoneyReading, readMoney } from '@/lib/money/read-money';
import { isCountryCode } from '@/lib/numbers/countries';
import { isHolidayPlace, isLocale, isZone } from './places';

/** The forms of the settings page as they are posted; each yields some columns of the workshop's row. */

const line = (missing: string) =>
  z.string(missing).trim().min(1, missing).max(200, 'Use 200 characters or fewer');
const optionalLine = z.string().trim().max(200, 'Use 200 characters or fewer').default('');
const longText = z.string().trim().max(40_000, 'Use 40,000 characters or fewer').default('');
const lines = longText.transform((text) =>
  text
    .split('\n')
    .map((entry) => entry.trim())
    .filter(Boolean),
);
const wholeNumber = (missing: string, low: number, high: number) =>
  z
    .string(missing)
    .trim()
    .regex(/^\d{1,6}$/, `Enter a whole number from ${low} to ${high}`)
    .transform(Number)
    .pipe(z.number().min(low, `Enter ${low} or more`).max(high, `Enter ${high} or less`));

export const detailsInput = z.object({
  name: line('Enter the workshop’s name'),
  tagline: optionalLine,
  addressLines: lines.pipe(
    z
      .array(z.string().max(80, 'Keep each line of the address to 80 characters'))
      .max(5, 'Use five lines or fewer'),
  ),
  postcode: optionalLine,
  town: optionalLine,
  country: z.string('Choose a country').refine(isCountryCode, 'Choose a country'),
  email: line('Enter the address for customers’ mail').pipe(
    z.email('Enter an e-mail address, like workshop@example.org'),
  ),
  phone: optionalLine,
});

const MONEY_PROBLEMS: Record<Extract<MoneyReading, { ok: false }>['reason'], string> = {
  format: 'Enter an amount, like 12.50',
  decimals: 'This has more decimals than the currency',
  range: 'This amount is too large',
};
const FEES = ['returnFee', 'inspectionFee', 'labourRate'] as const;
// A signed 32-bit column; no fee of a small workshop comes near it.
const MOST_MINOR = 2_000_000_000;

export const moneyInput = z
  .object({
    currency: z.string('Choose a currency').refine(isCurrency, 'Choose a currency'),
    pricesIncludeTax: z
      .enum(['yes', 'no'], 'Choose how prices are kept')
      .transform((answer) => answer === 'yes'),
    taxNumber: optionalLine,
    returnFee: z.string('Enter the return fee, 0 for none'),
    inspectionFee: z.string('Enter the inspection fee, 0 for none'),
    labourRate: z.string('Enter what an hour at the bench costs you, 0 if you do not know'),
    approvalDays: wholeNumber('Enter how many days a price holds', 30, 365),
  })
  .transform(({ returnFee, inspectionFee, labourRate, ...rest }, context) => {
    const typed = { returnFee, inspectionFee, labourRate };
    const read = FEES.map((field) => {
      const reading = readMoney(typed[field], rest.currency);
      const problem = reading.ok ? problemOf(reading.minor) : MONEY_PROBLEMS[reading.reason];
      if (problem) context.addIssue({ code: 'custom', path: [field], message: problem });
      return reading.ok ? reading.minor : 0;
    });
    const [returnFeeMinor = 0, inspectionFeeMinor = 0, labourRateMinor = 0] = read;
    return { ...rest, returnFeeMinor, inspectionFeeMinor, labourRateMinor };
  });

function problemOf(minor: number): string | null {
  if (minor < 0) return 'Enter an amount that is not below zero';
  return minor > MOST_MINOR ? MONEY_PROBLEMS.range : null;
}

export const daysInput = z
  .object({
    timeZone: line('Enter a time zone').refine(
      isZone,
      'Choose a time zone from the list, like Europe/London',
    ),
    locale: line('Enter a language').refine(isLocale, 'Enter a language tag, like en-GB'),
    paper: z.enum(['A4', 'LETTER'], 'Choose a paper size'),
    holidays: z
      .string('Choose whose public holidays count')
      .refine(isHolidayPlace, 'Choose whose public holidays count'),
    capacityMinutesDay: wholeNumber('Enter the minutes of bench work on a working day', 15, 10_000),
  })
  .transform(({ holidays, ...rest }) => {
    const [holidayCountry = '', holidayRegion = ''] = holidays.split('/');
    return {
      ...rest,
      locale: Intl.getCanonicalLocales(rest.locale)[0] ?? rest.locale,
      holidayCountry,
      holidayRegion,
    };
  });

export const textsInput = z.object({
  termsText: longText,
  privacyText: longText,
  paymentText: longText,
  packingText: lines.pipe(
    z.array(z.string().max(300, 'Keep each line to 300 characters')).max(12, 'Use twelve lines or fewer'),
  ),
  territory: optionalLine,
});

export const closingDayInput = z.object({
  day: z.string('Choose a date').refine(isDay, 'Choose a date'),
  name: line('Say why you are closed, like “Stocktaking”'),
});

export type SettingsPart =
  | z.output<typeof detailsInput>
  | z.output<typeof moneyInput>
  | z.output<typeof daysInput>
  | z.output<typeof textsInput>;
