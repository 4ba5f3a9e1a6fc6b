import { z } from 'zod';
import { boundedTerm, HELD_RULES, type PolicyTerms, START_EVENTS } from './rules/terms';

const term = z.string().nullable().transform(boundedTerm);

const stored = z.object({
  startEvent: z.enum(START_EVENTS),
  workTerm: term,
  partsTerm: term,
  exclusions: z.array(z.string()),
  renewedMinimum: term,
  heldRule: z.enum(HELD_RULES),
  rollLastDay: z.boolean(),
  graceDays: z.number().int(),
  transferable: z.boolean(),
});

/** The terms of one stored version of a policy; throws where a row does not fit. */
export function readTerms(row: Record<string, unknown>): PolicyTerms {
  return stored.parse(row);
}
