import { z } from 'zod';
import { countedField } from '@/app/ui/forms/counted-field';
import { LIMITS } from '@/lib/catalogue/rules/list-limits';
import { customerAnswers } from '@/lib/jobs/rules/address';
import { neededText } from '@/lib/jobs/rules/typed-text';
import { extraField, serialField } from '../parcel-fields';

export const takeInForm = z.object({
  version: countedField,
  serial: serialField,
  // What the model comes with, and one thing in the customer's own words.
  arrived: z.array(z.string().max(LIMITS.entry)).max(LIMITS.entries + 1),
  extra: extraField,
  /** the job that was opened for the parcel first, as it was shown */
  opened: z.string().max(20).optional(),
  openedVersion: countedField.optional(),
});

/** A parcel without a booking: whose it is, what it is, and what lay in it. */
export const walkInForm = z.object({
  formKey: z.uuid(),
  repair: z.uuid('Choose the unit and a repair'),
  serial: serialField,
  problem: neededText('what the letter says, or that there is none', 2000),
  extra: extraField,
  battery: z.enum(['healthy', 'none', 'unknown'], 'Choose how the battery looks'),
  /** it came for something else than what its certificate covers */
  isOther: z
    .literal('yes')
    .optional()
    .transform((ticked) => ticked === 'yes'),
  ...customerAnswers.shape,
});
