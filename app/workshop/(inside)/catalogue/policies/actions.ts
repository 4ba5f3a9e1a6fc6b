'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { savePolicyVersion } from '@/lib/catalogue/save-policy-version';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { refused } from '../../../refused';
import { requireStaff } from '../../../who';
import { typedIn } from '../fields';
import { policySchema } from './policy-schema';

/** Writes a new policy, or the next version of the one whose id is bound, made from version `basedOn`. */
export async function savePolicyAction(
  policyId: string | null,
  basedOn: number,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  await requireStaff(rolesThatMay('catalogue'));
  const parsed = parseForm(policySchema, formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() => savePolicyVersion({ ...parsed.data, policyId, basedOn, now: now() }));
  if (!outcome.ok) return refused(outcome.refusal, typedIn(formData));
  redirect(`/workshop/catalogue/policies/${outcome.value.policyId}?saved=yes` as Route);
}
