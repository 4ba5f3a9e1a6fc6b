import { z } from 'zod';
import { addressAnswers } from '@/lib/jobs/rules/booking';
import { neededText } from '@/lib/jobs/rules/typed-text';

const MOST_THINGS = 20;

export const serialField = z
  .string({ error: 'Enter the serial as it stands on the unit' })
  .trim()
  .max(60, 'Keep this to 60 characters')
  .regex(/[A-Za-z0-9]/, 'A serial has letters or digits. Enter it as it stands on the unit');

/** What came beside what was told, one thing to a line or with commas between them, each once. */
export const extraField = z
  .string()
  .max(2000, 'Keep this to 2,000 characters')
  .optional()
  .default('')
  .transform(listed)
  .refine((things) => things.length <= MOST_THINGS, `Name ${MOST_THINGS} things at most`)
  .refine((things) => things.every((thing) => thing.length <= 80), 'Keep each thing to 80 characters');

/** Whose unit it is, asked of staff and not of the customer. */
export const customerFields = {
  ...addressAnswers.shape,
  name: neededText('the customer’s name', 120),
  email: neededText('the customer’s e-mail address', 254).pipe(
    z.email('Enter an e-mail address like name@example.org'),
  ),
  address1: neededText('the first line of the address', 120),
  postcode: neededText('the postcode', 20),
  town: neededText('the town', 80),
};

function listed(text: string): string[] {
  const things = text.split(/[\n,;]/).map((thing) => thing.trim());
  return [...new Set(things.filter((thing) => thing !== ''))];
}
