import { z } from 'zod';
import { countedField } from '@/app/ui/forms/counted-field';
import { day, isDay } from '@/lib/calendar/day';
import { readTerm } from '@/lib/catalogue/rules/term-parts';
import { LARGEST_KEPT } from '@/lib/numbers/column';
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

/** The open order that pieces came of; null where they came of none, undefined where nobody said. */
const ofOrder = z
  .union([z.literal('none'), z.uuid()], 'Choose the order it came of')
  .optional()
  .transform((order) => (order === 'none' ? null : order));

const expectedDay = z
  .string()
  .trim()
  .refine((text) => text === '' || isDay(text), 'Enter a day, like 2026-11-25')
  .default('')
  .transform((text) => (text === '' ? null : day(text)));

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
    .extend({ received: wholeNumber(1, 100_000), order: ofOrder })
    .transform(({ unitCost, ...rest }) => ({ ...rest, unitCostMinor: unitCost }));

export const moreOfLotSchema = (currency: string) =>
  z
    .object({
      received: countedField,
      quantity: wholeNumber(1, 100_000),
      order: ofOrder,
      unitCost: money(currency, 'Enter what one piece cost'),
    })
    .transform(({ unitCost, ...rest }) => ({ ...rest, unitCostMinor: unitCost }));

export const writeOffSchema = z.object({
  inStock: countedField,
  quantity: wholeNumber(1, 100_000),
  reason: line('Say why they will not be fitted', 300),
});

export const expectOrderSchema = z.object({ expectedOn: expectedDay });

/** `came`: pieces of the order that the form showed as booked in. */
export const endOrderSchema = z.object({ came: z.coerce.number().int().min(0).max(LARGEST_KEPT) });

const pieces = wholeNumber(1, 100_000);

/** Parts that were ordered in one go; beside each ticked id stands how many pieces, as `pieces-<id>`. */
export const orderSchema = z
  .looseObject({
    ordered: z.array(z.uuid()).min(1, 'Tick what was ordered').max(500),
    supplier: line('Enter who it was ordered from'),
    orderedOn: z
      .string('Enter the day it was ordered')
      .refine(isDay, 'Enter a day, like 2026-11-25')
      .transform(day),
    expectedOn: expectedDay,
    formKey: z.uuid(),
  })
  .transform(({ ordered, supplier, orderedOn, expectedOn, formKey, ...rest }, context) => ({
    supplier,
    orderedOn,
    expectedOn,
    formKey,
    pieces: [...new Set(ordered)].map((partId) => {
      const field = `pieces-${partId}`;
      const quantity = pieces.safeParse(rest[field]);
      // A part that the form did not list has no field of its own.
      const path = [field in rest ? field : 'ordered'];
      if (!quantity.success)
        for (const { message } of quantity.error.issues) context.addIssue({ code: 'custom', message, path });
      return { partId, quantity: quantity.data ?? 0 };
    }),
  }));
