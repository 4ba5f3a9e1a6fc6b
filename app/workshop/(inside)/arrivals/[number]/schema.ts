import { z } from 'zod';
import { countedField } from '@/app/ui/forms/counted-field';
import { LIMITS } from '@/lib/catalogue/rules/list-limits';
import { addressAnswers } from '@/lib/jobs/rules/booking';
import { neededText } from '@/lib/jobs/rules/typed-text';

const MOST_THINGS = 20;

const serial = z
  .string({ error: 'Enter the serial as it stands on the unit' })
  .trim()
  .max(60, 'Keep this to 60 characters')
  .regex(/[A-Za-z0-9]/, 'A serial has letters or digits. Enter it as it stands on the unit');

const extra = z
  .string()
  .max(2000, 'Keep this to 2,000 characters')
  .optional()
  .default('')
  .transform(listed)
  .refine((things) => things.length <= MOST_THINGS, `Name ${MOST_THINGS} things at most`)
  .refine((things) => things.every((thing) => thing.length <= 80), 'Keep each thing to 80 characters');

export const takeInForm = z.object({
  version: countedField,
  serial,
  // What the model comes with, and one thing in the customer's own words.
  arrived: z.array(z.string().max(LIMITS.entry)).max(LIMITS.entries + 1),
  extra,
});

/** A parcel without a booking: whose it is, what it is, and what lay in it. */
export const walkInForm = z.object({
  formKey: z.uuid(),
  repair: z.uuid('Choose the unit and a repair'),
  serial,
  problem: z
    .string('Enter what the letter says, or that there is none')
    .trim()
    .min(1, 'Enter what the letter says, or that there is none')
    .max(2000, 'Keep this to 2,000 characters'),
  extra,
  battery: z.enum(['healthy', 'none', 'unknown'], 'Choose how the battery looks'),
  ...addressAnswers.shape,
  name: neededText('the customer’s name', 120),
  email: neededText('the customer’s e-mail address', 254).pipe(
    z.email('Enter an e-mail address like name@example.org'),
  ),
  address1: neededText('the first line of the address', 120),
  postcode: neededText('the postcode', 20),
  town: neededText('the town', 80),
});

/** Things one to a line, or with commas between them, each once. */
function listed(text: string): string[] {
  const things = text.split(/[\n,;]/).map((thing) => thing.trim());
  return [...new Set(things.filter((thing) => thing !== ''))];
}
