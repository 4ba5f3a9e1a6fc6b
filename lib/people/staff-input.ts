import { z } from 'zod';
import { neededText } from '@/lib/jobs/rules/typed-text';
import { ROLES } from './rules/roles';

/** What the people page asks about a member of staff. */
export const staffInput = z.object({
  name: neededText('the person’s name', 80),
  email: z
    .string('Enter the address the person signs in with')
    .trim()
    .toLowerCase()
    .max(254, 'The address must be 254 characters or fewer')
    .pipe(z.email('Enter an e-mail address, like name@example.org')),
  initials: z
    .string()
    .trim()
    .toUpperCase()
    .regex(/^\p{L}{1,3}$/u, 'Initials are one to three letters')
    .optional(),
  role: z.enum(ROLES, 'Choose what the person does'),
});

/** What the form of a person shows of them, for its mark. */
export const STAFF_FIELDS = { name: true, email: true, initials: true, role: true, isActive: true } as const;

export type StaffInput = z.output<typeof staffInput>;
