import { z } from 'zod';
import { LINE_KINDS, type QuoteLine } from './rules/lines';

const stored = z.object({
  kind: z.enum(LINE_KINDS),
  description: z.string(),
  amountMinor: z.number().int(),
  taxCategory: z.enum(['S', 'Z', 'E', 'O']),
  taxRateBps: z.number().int(),
});

/** Reads a stored line back; throws where a row does not fit. */
export function readLine(row: z.input<typeof stored> | Record<string, unknown>): QuoteLine {
  const line = stored.parse(row);
  return {
    kind: line.kind,
    description: line.description,
    amount: line.amountMinor,
    category: line.taxCategory,
    rateBps: line.taxRateBps,
  };
}

export const taxCategory = stored.shape.taxCategory;
