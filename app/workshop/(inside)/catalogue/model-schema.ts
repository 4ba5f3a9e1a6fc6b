import { z } from 'zod';

import { LIMITS } from '@/lib/catalogue/rules/list-limits';
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

export const modelSchema = z.object({
  familyId: z.string('Choose a family'),
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
  accessories: lines(LIMITS.entries),
  isListed: yesNo,
});
