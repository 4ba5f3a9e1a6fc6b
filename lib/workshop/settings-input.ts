import { z } from 'zod';
import { isDay } from '@/lib/calendar/day';
import { isCountryCode } from '@/lib/numbers/countries';
import { AIMS, readAim } from '@/lib/promise/rules/aim';
import type { customsInput } from './customs-input';
import { line, lines, longText, optionalLine, wholeNumber } from './input-parts';
import type { keepingInput } from './keeping-input';
import type { moneyInput } from './money-input';
import { isHolidayPlace, isLocale, isZone } from './places';

export { moneyInput } from './money-input';

/** The forms of the settings page as they are posted; each yields some columns of the workshop's row. */

export const detailsInput = z.object({
  name: line('Enter the workshop’s name'),
  tagline: optionalLine,
  addressLines: lines.pipe(
    z
      .array(z.string().max(80, 'Keep each line of the address to 80 characters'))
      .min(1, 'Enter the address that parcels come to')
      .max(5, 'Use five lines or fewer'),
  ),
  postcode: optionalLine,
  town: line('Enter the town'),
  country: z.string('Choose a country').refine(isCountryCode, 'Choose a country'),
  email: line('Enter the address for customers’ mail').pipe(
    z.email('Enter an e-mail address, like workshop@example.org'),
  ),
  phone: optionalLine,
  territory: line('Say where your certificates hold good, like the United Kingdom and Ireland'),
});

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
    promiseAim: z
      .enum(AIMS.map(String), 'Choose how many units should be ready by their day')
      .transform((percent) => readAim(Number(percent))),
    answerDays: wholeNumber('Enter within how many working days you answer', 1, 20),
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
});

const chosenDay = z.string('Choose a date').refine(isDay, 'Choose a date');

/** One day, or several in a row. */
export const closingDayInput = z.object({
  from: chosenDay,
  to: chosenDay.optional(),
  name: line('Say why you are closed, like “Stocktaking”'),
});

export const openAgainInput = z.object({ from: chosenDay, to: chosenDay });

export type SettingsPart =
  | { asksSecondStep: boolean }
  | z.output<typeof customsInput>
  | z.output<typeof detailsInput>
  | z.output<typeof moneyInput>
  | z.output<typeof daysInput>
  | z.output<typeof textsInput>
  | z.output<typeof keepingInput>;
