import { z } from 'zod';
import { neededText, optionalText } from './typed-text';

/** Name and return address, asked in the words of whoever fills them in. */
function asked({ whose, the }: { whose: string; the: string }) {
  return z.object({
    name: neededText(`${whose} name`, 120),
    email: neededText(`${whose} e-mail address`, 254).pipe(
      z.email('Enter an e-mail address like name@example.org'),
    ),
    phone: z
      .string()
      .trim()
      .max(40, 'Keep this to 40 characters')
      .regex(/^[0-9+()./\s-]*$/, 'Use digits, spaces and + only')
      .optional()
      .default(''),
    address1: neededText(`the first line of ${the} address`, 120),
    address2: optionalText(120),
    postcode: neededText(`${the} postcode`, 20),
    town: neededText(`${the} town`, 80),
    country: z.string({ error: `Choose ${the} country` }).regex(/^[A-Z]{2}$/, `Choose ${the} country`),
  });
}

/** What customers answer of themselves. */
export const addressAnswers = asked({ whose: 'your', the: 'your' });

/** The same, answered by staff for a customer. */
export const customerAnswers = asked({ whose: 'the customer’s', the: 'the' });

export type AddressAnswers = z.output<typeof addressAnswers>;

type TwoLines = Pick<AddressAnswers, 'address1' | 'address2'>;

/** The lines of an address below its name, without empty ones. */
export function addressLinesOf({ address1, address2 }: TwoLines): string[] {
  return [address1, address2].filter((line) => line !== '');
}

/** Kept lines as the two fields of a form: ['The Net Loft', 'Back door', 'Old Town'] -> second 'Back door, Old Town'. */
export function addressFieldsOf([address1 = '', ...rest]: readonly string[]): TwoLines {
  return { address1, address2: rest.join(', ') };
}
