import 'server-only';
import { headers } from 'next/headers';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { changePassword } from '@/lib/people/change-password';
import { readWorkshop } from '@/lib/workshop/records';
import { changePasswordForm } from './change-password-schema';
import type { Staff } from './who';

/** Reads and carries out the form that changes a password; null when it is changed. */
export async function changePasswordBy(person: Staff, formData: FormData): Promise<FormState | null> {
  const parsed = parseForm(changePasswordForm, formData);
  if (!parsed.ok) return parsed.state;
  const { name: workshopName } = await readWorkshop();
  const common = { person, workshopName, headers: await headers(), now: now() };
  const outcome = await attempt(() => changePassword({ ...common, ...parsed.data }));
  return outcome.ok ? null : refused(outcome.refusal);
}
