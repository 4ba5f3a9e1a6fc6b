'use server';
import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import type { z } from 'zod';
import { refused } from '@/app/refused';
import type { FormAction, FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { seenAtField } from '@/app/ui/forms/seen-at-field';
import { typedValues } from '@/app/ui/forms/typed-values';
import { onForm } from '@/app/workshop/on-form';
import { day } from '@/lib/calendar/day';
import { attempt } from '@/lib/outcome';
import { closeOn, openOn } from '@/lib/workshop/closing-days';
import { keepingInput } from '@/lib/workshop/keeping-input';
import { saveSettings } from '@/lib/workshop/save-settings';
import {
  closingDayInput,
  daysInput,
  detailsInput,
  moneyInput,
  openAgainInput,
  type SettingsPart,
  textsInput,
} from '@/lib/workshop/settings-input';
import { senderOf } from '../../sender-of-form';

export const saveDetails: FormAction = async (_before, formData) => save(detailsInput, formData, 'details');

export const saveMoney: FormAction = async (_before, formData) => save(moneyInput, formData, 'money');

export const saveDays: FormAction = async (_before, formData) => save(daysInput, formData, 'days');

export const saveTexts: FormAction = async (_before, formData) => {
  const isPreview = formData.get('intent') === 'preview';
  if (!isPreview) return save(textsInput, formData, 'texts');
  const sender = await senderOf('settings', formData);
  if (!sender.ok) return sender.state;
  return { values: typedValues(formData), done: 'The preview is below the form. Nothing is saved yet.' };
};

export const saveKeeping: FormAction = async (_before, formData) => save(keepingInput, formData, 'keeping');

export const addClosingDay: FormAction = async (_before, formData) =>
  onForm(formData, {
    permission: 'settings',
    schema: closingDayInput,
    work: ({ data: { from, to = from, name } }) => closeOn({ from: day(from), to: day(to), name }),
    after: (hit) => ({ done: `It is on the list.${hitWords(hit)}` }),
  });

export const removeClosingDay: FormAction = async (_before, formData) =>
  onForm(formData, {
    permission: 'settings',
    schema: openAgainInput,
    work: ({ data: { from, to } }) => openOn({ from: day(from), to: day(to) }),
    after: () => '/workshop/settings/days#closing-days',
  });

/** How many promises the closure hits, where it does. */
function hitWords(promises: number): string {
  if (promises === 0) return '';
  const made = promises === 1 ? '1 promise is made' : `${promises} promises are made`;
  return ` ${made} for these days: see Promises to move.`;
}

async function save(
  schema: z.ZodType<SettingsPart>,
  formData: FormData,
  part: 'details' | 'money' | 'days' | 'texts' | 'keeping',
): Promise<FormState> {
  const sender = await senderOf('settings', formData);
  if (!sender.ok) return sender.state;
  const parsed = parseForm(schema, formData);
  if (!parsed.ok) return parsed.state;
  const seenAt = seenAtField.safeParse(formData.get('seenAt'));
  if (!seenAt.success) return { message: 'This form was not complete. Load the page again.' };
  const outcome = await attempt(() => saveSettings(parsed.data, seenAt.data));
  if (outcome.ok) {
    // The name stands in the frame of every page, which a redirect alone leaves as it was.
    refresh();
    redirect(`/workshop/settings?saved=${outcome.value.isNewCurrency ? 'currency' : part}`);
  }
  const { refusal } = outcome;
  if (refusal.field) return refused(refusal, typedValues(formData));
  const conflict = { message: refusal.message, changes: [], href: `/workshop/settings/${part}` };
  return { conflict, values: typedValues(formData) };
}
