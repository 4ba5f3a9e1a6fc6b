import { z } from 'zod';
import { HELD_RULES, type PolicyTerms, START_EVENTS } from './rules/terms';

const stored = z.object({
  startEvent: z.enum(START_EVENTS),
  workTerm: z.string().nullable(),
  partsTerm: z.string().nullable(),
  exclusions: z.array(z.string()),
  renewedMinimum: z.string().nullable(),
  heldRule: z.enum(HELD_RULES),
  rollLastDay: z.boolean(),
  graceDays: z.number().int(),
  transferable: z.boolean(),
});

/** The terms of one stored version of a policy; throws where a row does not fit. */
export function readTerms(row: Record<string, unknown>): PolicyTerms {
  return stored.parse(row);
}
