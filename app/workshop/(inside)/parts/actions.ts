'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import type { z } from 'zod';
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
  return onLot({
    lotId,
    formData,
    schema: correctLotSchema,
    work: (data, by) => correctLot(shownIn(lotId, formData), data, by),
  });
}

/** Adds pieces of the bound lot. */
export async function addToLotAction(
  lotId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(lotId);
  return onLot({
    lotId,
    formData,
    schema: moreOfLotSchema,
    work: (data, by) => addToLot({ ...data, ...by, lotId }),
  });
}

/** Takes pieces of the bound lot out of stock without a job. */
export async function writeOffAction(
  lotId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(lotId);
  return onLot({
    lotId,
    formData,
    schema: () => writeOffSchema,
    work: (data, by) => writeOffLot({ ...data, ...by, lotId }),
  });
}

/** What somebody at the bench does to a lot, kept in its history under their name; then the lot is shown. */
async function onLot<S extends z.ZodType>(o: {
  lotId: string;
  formData: FormData;
  schema: (currency: string) => S;
  work: (data: z.output<S>, by: { userId: string; now: Date }) => Promise<unknown>;
}): Promise<FormState> {
  const staff = await requireStaff(rolesThatMay('bench'));
  const { currency } = await readWorkshop();
  const parsed = parseForm(o.schema(currency), o.formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() => o.work(parsed.data, { userId: staff.id, now: now() }));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(o.formData));
  redirect(`/workshop/parts/lots/${o.lotId}?saved=yes` as Route);
}
