import { z } from 'zod';
import { readReading } from '@/lib/bench/rules/checks';
import { typedText } from '@/lib/jobs/rules/typed-text';

const decimal = (missing: string) =>
  z.string(missing).transform((text, context) => {
    const value = readReading(text);
    if (value !== null) return value;
    context.addIssue({ code: 'custom', message: missing });
    return z.NEVER;
  });

/** Longest wire across a board and the wires that are drawn as such (common practice, no source). */
const LENGTH = 'Enter the length in whole millimetres, from 1 to 2000';
const DIAMETER = 'Enter the diameter in millimetres, from 0.02 to 2, like 0.1';

/** A jumper wire as typed: sizes in millimetres, the reading in either unit. */
export const wireForm = z
  .object({
    from: typedText('Say where the wire begins', 60),
    to: typedText('Say where the wire ends', 60),
    length: decimal(LENGTH).pipe(z.number().int(LENGTH).min(1, LENGTH).max(2000, LENGTH)),
    diameter: decimal(DIAMETER).pipe(z.number().min(0.02, DIAMETER).max(2, DIAMETER)),
    reading: decimal('Enter the reading as a number, for instance 78').pipe(
      z.number().min(0, 'A reading is not below nothing'),
    ),
    unit: z.enum(['milliohm', 'ohm'], 'Choose the unit'),
  })
  .transform(({ from, to, length, diameter, reading, unit }) => ({
    fromPoint: from,
    toPoint: to,
    lengthMm: length,
    diameterUm: Math.round(diameter * 1000),
    milliohms: unit === 'ohm' ? Math.round(reading * 1_000_000) / 1000 : reading,
  }));
