import { z } from 'zod';
import { type CheckDraft, isCheckKind } from '@/lib/bench/rules/check-problems';
import { BATTERY_KINDS } from '@/lib/parcels/rules/battery';

/*
 * Words of this room.
 * family: models of a kind (field recorders). model: one make and type of unit. repair: one job on the price list of a model.
 * listed: shown to customers and bookable. policy: what a warranty promises; it and the check sheet of a repair have versions,
 * the newest counts for new jobs and certificates, older ones stay with what was done under them.
 */

/** Rows of the catalogue read back; each throws where a row does not fit. */
export const storedTax = z.enum(['S', 'Z', 'E', 'O']);
export const storedBattery = z.enum(BATTERY_KINDS);

const storedCheck = z.object({
  kind: z.string().refine(isCheckKind),
  label: z.string(),
  help: z.string(),
  unit: z.string().nullable(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  choices: z.array(z.string()),
  passing: z.array(z.string()),
  lesson: z.string().nullable(),
  caution: z.string().nullable(),
  pinTable: z.string().nullable(),
});

/** One check of a stored sheet, without its id and place. */
export function readCheck(row: Record<string, unknown>): CheckDraft {
  return storedCheck.parse(row);
}
