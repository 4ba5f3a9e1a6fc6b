'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { onlyPlain, onlyPlainOrNew } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { shownIn } from '@/app/ui/forms/shown-in';
import { typedValues } from '@/app/ui/forms/typed-values';
import { saveFamily } from '@/lib/catalogue/save-family';
import { saveModel } from '@/lib/catalogue/save-model';
import { saveRepair } from '@/lib/catalogue/save-repair';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { readWorkshop } from '@/lib/workshop/records';
import { requireStaff } from '../../who';
import { familySchema } from './family-schema';
import { modelSchema } from './model-schema';
import { repairSchema } from './repair-schema';

/** Adds a family, or changes the one whose id is bound. */
export async function saveFamilyAction(
  id: string | null,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlainOrNew(id);
  await requireStaff(rolesThatMay('catalogue'));
  const parsed = parseForm(familySchema, formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() => saveFamily(shownIn(id, formData), parsed.data));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect('/workshop/catalogue?saved=yes');
}

/** Adds a model, or changes the one whose id is bound, and shows it. */
export async function saveModelAction(
  id: string | null,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlainOrNew(id);
  await requireStaff(rolesThatMay('catalogue'));
  const parsed = parseForm(modelSchema, formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() => saveModel(shownIn(id, formData), parsed.data));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/catalogue/models/${outcome.value}?saved=yes` as Route);
}

/** Adds a repair to a model, or changes the one whose id is bound, and shows it. */
export async function saveRepairAction(
  modelId: string,
  id: string | null,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(modelId);
  onlyPlainOrNew(id);
  const staff = await requireStaff(rolesThatMay('catalogue'));
  const { currency } = await readWorkshop();
  const parsed = parseForm(repairSchema(currency), formData);
  if (!parsed.ok) return parsed.state;
  const by = { now: now(), userId: staff.id };
  const outcome = await attempt(() => saveRepair(shownIn(id, formData), { ...parsed.data, modelId }, by));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/catalogue/repairs/${outcome.value}?saved=yes` as Route);
}
