'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { onlyPlain, onlyPlainOrNew } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { shownIn } from '@/app/ui/forms/shown-in';
import { typedValues } from '@/app/ui/forms/typed-values';
import { retirePolicy } from '@/lib/catalogue/retire-policy';
import { savePolicyVersion } from '@/lib/catalogue/save-policy-version';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../who';
import { policySchema, retireSchema } from './policy-schema';

/** Writes a new policy, or the next version of the one whose id is bound. */
export async function savePolicyAction(
  id: string | null,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlainOrNew(id);
  await requireStaff(rolesThatMay('catalogue'));
  const parsed = parseForm(policySchema, formData);
  if (!parsed.ok) return parsed.state;
  const shown = shownIn(id, formData);
  const outcome = await attempt(() => savePolicyVersion({ ...parsed.data, shown, now: now() }));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/catalogue/policies/${outcome.value.policyId}?saved=yes` as Route);
}

/** Takes the bound policy out of the choice for repairs, or puts it back. */
export async function retirePolicyAction(
  id: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(id);
  await requireStaff(rolesThatMay('catalogue'));
  const parsed = parseForm(retireSchema, formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() => retirePolicy({ id, isRetired: parsed.data.retire, now: now() }));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect('/workshop/catalogue/policies');
}
