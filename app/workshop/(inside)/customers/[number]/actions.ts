'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { erasePerson } from '@/lib/keeping/erase-person';
import { attempt } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { removalForm } from './schema';

export async function removeData(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  onlyPlain(number);
  const staff = await requireStaff(rolesThatMay('personal-data'));
  const parsed = parseForm(removalForm, formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() =>
    erasePerson({
      number,
      isCoverConfirmed: parsed.data.cover === 'yes',
      actor: staffActor(staff),
      now: now(),
    }),
  );
  if (!outcome.ok) return refused(outcome.refusal);
  redirect(`/workshop/customers/${encodeURIComponent(number)}?removed=yes` as Route);
}
