import { z } from 'zod';
import { neededText, optionalText } from '@/lib/jobs/rules/typed-text';
import { readCentimetres, readGrams } from '@/lib/parcels/rules/measures';
import { PACKED_BATTERIES } from '@/lib/parcels/rules/packed-battery';

const SIDES = ['length', 'width', 'height'] as const;

const measure = (read: (text: string) => number | null, problem: string) =>
  z
    .string()
    .trim()
    .max(20, problem)
    .optional()
    .transform((typed, context) => {
      if (typed === undefined || typed === '') return null;
      const value = read(typed);
      if (value === null) context.addIssue({ code: 'custom', message: problem });
      return value;
    });
const side = measure(readCentimetres, 'Enter centimetres, like 30 or 30.5');

/** The packed parcel; nothing of it has to be known, but of the sides all three or none. */
const parcelShape = {
  weight: measure(readGrams, 'Enter whole grams, like 1250'),
  length: side,
  width: side,
  height: side,
  value: z.string().trim().max(20).optional().default(''),
  battery: z.enum(PACKED_BATTERIES, 'Choose how the battery travels').optional().default('none'),
};

type Sides = Record<(typeof SIDES)[number], number | null>;

function needAllSides(sides: Sides, context: z.RefinementCtx): void {
  const missing = SIDES.filter((name) => sides[name] === null);
  if (missing.length === 0 || missing.length === SIDES.length) return;
  for (const name of missing) {
    context.addIssue({ code: 'custom', path: [name], message: 'Give all three sides, or none' });
  }
}

export const parcelForm = z.object(parcelShape).superRefine(needAllSides);

const byCarrier = z
  .object({
    ...parcelShape,
    by: z.literal('carrier'),
    carrier: neededText('the carrier', 80),
    carrierReference: neededText('the carrier’s reference', 60),
    postage: optionalText(20),
  })
  .superRefine(needAllSides);

/** Whoever collects a unit needs no parcel: nothing that was typed for one is read. */
export const dispatchForm = z.discriminatedUnion(
  'by',
  [byCarrier, z.object({ by: z.literal('collected') })],
  'Choose who takes it',
);

export const cameBackForm = z.object({
  reason: neededText('why it came back, in words for the customer', 500),
});
export const referenceForm = z.object({ carrierReference: neededText('the carrier’s reference', 60) });

export type ParcelTyped = z.output<typeof parcelForm>;
