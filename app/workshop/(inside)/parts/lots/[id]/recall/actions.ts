'use server';
import { redirect } from 'next/navigation';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { onForm } from '@/app/workshop/on-form';
import { senderOf } from '@/app/workshop/sender-of-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { recallLot } from '@/lib/bench/recall-lot';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { recallForm, stopLotForm } from './schema';

/** Shows the letter as it would be read, or sends it to everybody on the list. */
export async function recallAction(
  lotId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(lotId);
  const sender = await senderOf('recall', formData);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const parsed = parseForm(recallForm, formData);
  if (!parsed.ok) return parsed.state;
  const { text, letters, formKey, step, seen } = parsed.data;
  const values = typedValues(formData);
  if (step !== 'send') return { done: 'This is the letter. Nothing is sent yet.', values };
  if (seen !== text)
    return { done: 'The letter was changed: this is how it reads now. Nothing is sent yet.', values };
  const outcome = await attempt(() =>
    recallLot({ lotId, text, letters, formKey, actor: staffActor(staff), now: now() }),
  );
  if (!outcome.ok) return refused(outcome.refusal, values);
  redirect(`/workshop/parts/lots/${lotId}?saved=recall`);
}

/** Stops a lot of which no unit is with a customer who can be written to. */
export async function stopLotAction(
  lotId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(lotId);
  return onForm({
    permission: 'recall',
    formData,
    schema: stopLotForm,
    work: ({ data, ...by }) => recallLot({ lotId, ...data, letters: 0, ...by }),
    after: () => `/workshop/parts/lots/${lotId}?saved=recall`,
  });
}
