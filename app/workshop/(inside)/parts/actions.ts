'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { onlyPlain, onlyPlainOrNew } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { shownIn } from '@/app/ui/forms/shown-in';
import { typedValues } from '@/app/ui/forms/typed-values';
import { correctLot } from '@/lib/bench/correct-lot';
import { addLot, addToLot, savePart, writeOffLot } from '@/lib/bench/parts';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { readWorkshop } from '@/lib/workshop/records';
import { requireStaff } from '../../who';
import { correctLotSchema, lotSchema, moreOfLotSchema, partSchema, writeOffSchema } from './part-schema';

/** Adds a part, or changes the one whose id is bound, and shows it. */
export async function savePartAction(
  id: string | null,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlainOrNew(id);
  await requireStaff(rolesThatMay('bench'));
  const parsed = parseForm(partSchema, formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() => savePart(shownIn(id, formData), parsed.data));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/parts/${outcome.value}?saved=yes` as Route);
}

/** Books a delivery of the bound part in as a new lot. */
export async function addLotAction(
  partId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(partId);
  await requireStaff(rolesThatMay('bench'));
  const { currency } = await readWorkshop();
  const parsed = parseForm(lotSchema(currency), formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() => addLot({ ...parsed.data, partId }));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/parts/${partId}?saved=yes` as Route);
}

/** Puts right what was typed of the bound lot. */
export async function correctLotAction(
  lotId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(lotId);
  const staff = await requireStaff(rolesThatMay('bench'));
  const { currency } = await readWorkshop();
  const parsed = parseForm(correctLotSchema(currency), formData);
  if (!parsed.ok) return parsed.state;
  const by = { userId: staff.id, now: now() };
  const outcome = await attempt(() => correctLot(shownIn(lotId, formData), parsed.data, by));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/parts/lots/${lotId}?saved=yes` as Route);
}

/** Adds pieces of the bound lot. */
export async function addToLotAction(
  lotId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(lotId);
  const staff = await requireStaff(rolesThatMay('bench'));
  const { currency } = await readWorkshop();
  const parsed = parseForm(moreOfLotSchema(currency), formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() => addToLot({ ...parsed.data, lotId, userId: staff.id, now: now() }));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/parts/lots/${lotId}?saved=yes` as Route);
}

/** Takes pieces of the bound lot out of stock without a job. */
export async function writeOffAction(
  lotId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(lotId);
  const staff = await requireStaff(rolesThatMay('bench'));
  const parsed = parseForm(writeOffSchema, formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() => writeOffLot({ lotId, ...parsed.data, userId: staff.id, now: now() }));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/parts/lots/${lotId}?saved=yes` as Route);
}
