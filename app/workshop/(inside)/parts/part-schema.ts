import { z } from 'zod';
import { countedField } from '@/app/ui/forms/counted-field';
import { isDay } from '@/lib/calendar/day';
import { readTerm } from '@/lib/catalogue/rules/term-parts';
import { line, money, termCount, termUnit, wholeNumber } from '../catalogue/fields';

export const partSchema = z
  .object({
    code: line('Enter your code for the part', 40),
    name: line('Enter what the part is'),
    term: termCount,
    termUnit,
    /** empty: it is ordered no more */
    reorderAt: z.union([
      z
        .string()
        .trim()
        .length(0)
        .transform(() => null),
      wholeNumber(0, 100_000),
    ]),
  })
  .transform(({ term, termUnit: unit, ...rest }) => ({ ...rest, term: readTerm(term, unit) }));

const lotFacts = (currency: string) =>
  z.object({
    code: line('Enter the lot’s code, as on the bag or the delivery note', 40),
    supplier: line('Enter who delivered it'),
    receivedOn: z.string('Enter the day it came').refine(isDay, 'Enter a day, like 2026-11-25'),
    unitCost: money(currency, 'Enter what one piece cost'),
  });

export const correctLotSchema = (currency: string) =>
  lotFacts(currency).transform(({ unitCost, ...rest }) => ({ ...rest, unitCostMinor: unitCost }));

export const lotSchema = (currency: string) =>
  lotFacts(currency)
    .extend({ received: wholeNumber(1, 100_000) })
    .transform(({ unitCost, ...rest }) => ({ ...rest, unitCostMinor: unitCost }));

export const moreOfLotSchema = (currency: string) =>
  z
    .object({
      received: countedField,
      quantity: wholeNumber(1, 100_000),
      unitCost: money(currency, 'Enter what one piece cost'),
    })
    .transform(({ unitCost, ...rest }) => ({ ...rest, unitCostMinor: unitCost }));

export const writeOffSchema = z.object({
  inStock: countedField,
  quantity: wholeNumber(1, 100_000),
  reason: line('Say why they will not be fitted', 300),
});
