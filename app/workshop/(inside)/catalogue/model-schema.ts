import { z } from 'zod';

import { LIMITS } from '@/lib/catalogue/rules/list-limits';
import { readTariffNumber } from '@/lib/catalogue/rules/tariff-number';
import { BATTERY_KINDS } from '@/lib/parcels/rules/battery';
import { line, lines, optionalLine, ticked, wholeNumber, yesNo } from './fields';
import { keysOf, SERIAL_RULE_WORDS } from './words';

/** Watt-hours as typed, with a point or a comma, or empty. */
const wattHours = z
  .string()
  .trim()
  .regex(/^\d{1,4}([.,]\d{1,4})?$/, 'Enter watt-hours, like 9.25')
  .optional()
  .transform((text) => (text === undefined ? null : Number(text.replace(',', '.'))))
  .refine((wh) => wh === null || wh > 0, 'Enter watt-hours above zero');

/** A tariff number as typed, with or without dots and spaces, or empty. */
const tariffNumber = optionalLine.transform((text, context) => {
  const digits = readTariffNumber(text);
  if (digits !== null) return digits;
  context.addIssue({ code: 'custom', message: 'Enter 6 to 12 digits, like 8519 81' });
  return z.NEVER;
});

export const modelSchema = z.object({
  familyId: z.uuid('Choose a family'),
  maker: line('Enter the maker'),
  name: line('Enter the name of the model'),
  aliases: lines(LIMITS.entries),
  serialPattern: optionalLine.transform((text) => text || null),
  serialRule: z.enum(keysOf(SERIAL_RULE_WORDS), 'Choose how serials are checked'),
  serialExample: optionalLine,
  serialPlace: optionalLine,
  battery: z.enum(BATTERY_KINDS, 'Choose what battery is in it'),
  batteryWh: wattHours,
  isMainsPowered: ticked,
  weightGrams: wholeNumber(0, LIMITS.weightGrams),
  lengthMm: wholeNumber(0, LIMITS.sideMm),
  widthMm: wholeNumber(0, LIMITS.sideMm),
  heightMm: wholeNumber(0, LIMITS.sideMm),
  tariffNumber,
  accessories: lines(LIMITS.entries),
  isListed: yesNo,
});
