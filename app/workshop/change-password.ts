import 'server-only';
import { headers } from 'next/headers';
import { z } from 'zod';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { changePassword } from '@/lib/people/change-password';
import { readWorkshop } from '@/lib/workshop/records';
import type { Staff } from './who';

const schema = z.object({
  currentPassword: z.string('Enter your present password'),
  newPassword: z.string('Enter a new password'),
});

/** Reads and carries out the form that changes a password; null when it is changed. */
export async function changePasswordBy(person: Staff, formData: FormData): Promise<FormState | null> {
  const parsed = parseForm(schema, formData);
  if (!parsed.ok) return parsed.state;
  const { name: workshopName } = await readWorkshop();
  const common = { person, workshopName, headers: await headers(), now: now() };
  const outcome = await attempt(() => changePassword({ ...common, ...parsed.data }));
  return outcome.ok ? null : refused(outcome.refusal);
}
