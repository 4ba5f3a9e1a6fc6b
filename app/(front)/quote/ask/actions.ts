'use server';
import { redirect } from 'next/navigation';
import { formPhotos, photoFormProblem } from '@/app/form-photos';
import { limitCaller } from '@/app/limit-caller';
import { refused } from '@/app/refused';
import type { FormAction } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { waitSentence } from '@/app/ui/forms/wait-sentence';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { askChoices } from '@/lib/quotes/ask-choices';
import { askForQuote } from '@/lib/quotes/ask-for-quote';
import { MOST_PHOTOS } from '@/lib/quotes/rules/request-answers';
import { askForm } from './schema';

/** More than a person asks in an hour, fewer than a program would. */
const ASKED_AN_HOUR = { max: 20, windowSeconds: 3600 };
const LISTS = ['symptoms', 'history', 'kept'];

/**
 * Takes a request for a price. Its photos are stored first and handed back as slips with whatever else was typed, so
 * that a form that was refused is put right and sent again without sending them twice.
 */
export const ask: FormAction = async (_before, formData) => {
  const limit = await limitCaller('quote', ASKED_AN_HOUR);
  // As it was typed: the name of a chosen device must not come back in the field for one that is not on the list.
  const typed = typedValues(formData, LISTS);
  if (!limit.allowed) return { message: waitSentence(limit.waitSeconds), values: typed };
  await nameDevice(formData);
  const at = now();
  const { photos, kept, problem } = await formPhotos(formData, { most: MOST_PHOTOS, now: at });
  const values = { ...typed, kept };
  const parsed = parseForm(askForm, formData, LISTS);
  const wrong = photoFormProblem(parsed, problem);
  if (!parsed.ok || wrong) return { ...wrong, values };
  const { formKey, ...answers } = parsed.data;
  const asked = await attempt(() => askForQuote({ answers, photos, formKey, now: at }));
  if (!asked.ok) return refused(asked.refusal, values);
  redirect(asked.value.isNew ? `/quote/${asked.value.token}?done=asked` : '/quote/ask/added');
};

/** A device chosen from the list has its name from there. */
async function nameDevice(formData: FormData): Promise<void> {
  const model = formData.get('model');
  if (typeof model !== 'string' || model === '') return;
  const { chosen } = await askChoices(model);
  if (chosen) formData.set('device', chosen.name);
}
