'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { putUsualPart, removeUsualPart } from '@/lib/catalogue/usual-parts';
import { attempt } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../../who';
import { partSchema } from './schema';

/** Adds a part to those the repair usually needs, or changes its number of pieces. */
export async function putPartAction(
  repairId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(repairId);
  await requireStaff(rolesThatMay('catalogue'));
  const parsed = parseForm(partSchema, formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() => putUsualPart({ repairId, ...parsed.data }));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/catalogue/repairs/${repairId}?saved=part#parts` as Route);
}

/** Takes a part off those the repair usually needs. */
export async function removePartAction(
  repairId: string,
  partId: string,
  _before: FormState,
  _formData: FormData,
): Promise<FormState> {
  onlyPlain(repairId, partId);
  await requireStaff(rolesThatMay('catalogue'));
  await removeUsualPart({ repairId, partId });
  redirect(`/workshop/catalogue/repairs/${repairId}?saved=part#parts` as Route);
}
