'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import type { z } from 'zod';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormAction, FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { routeTo } from '@/app/ui/page/route-to';
import { onForm } from '@/app/workshop/on-form';
import { senderOf } from '@/app/workshop/sender-of-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { liftRecall } from '@/lib/bench/lift-recall';
import { recallLot } from '@/lib/bench/recall-lot';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { liftForm, liftQuietlyForm, recallForm, stopLotForm } from './schema';

/** Shows the letter as it would be read, or sends it to everybody on the list. */
export const recallAction: FormAction<[lotId: string]> = async (lotId, _before, formData) => {
  onlyPlain(lotId);
  return lookThenSend({
    formData,
    schema: recallForm,
    send: ({ text, letters, formKey }, actor) =>
      recallLot({ lotId, text, letters, formKey, actor, now: now() }),
    after: routeTo(`/workshop/parts/lots/${lotId}?saved=recall`),
  });
};

/** Stops a lot of which no unit is with a customer who can be written to. */
export const stopLotAction: FormAction<[lotId: string]> = async (lotId, _before, formData) => {
  onlyPlain(lotId);
  return onForm(formData, {
    permission: 'recall',
    schema: stopLotForm,
    work: ({ data, ...by }) => recallLot({ lotId, ...data, letters: 0, ...by }),
    after: () => `/workshop/parts/lots/${lotId}?saved=recall`,
  });
};

/** Shows the letter that takes a recall back, or sends it to everybody who was written to and lifts the recall. */
export const liftAction: FormAction<[lotId: string]> = async (lotId, _before, formData) => {
  onlyPlain(lotId);
  return lookThenSend({
    formData,
    schema: liftForm,
    send: ({ text, letters, recalls }, actor) =>
      liftRecall({ lotId, text, letters, recalls, actor, now: now() }),
    after: routeTo(`/workshop/parts/lots/${lotId}?saved=lifted`),
  });
};

/** Lifts the recall of a lot about which nobody has to be written to. */
export const liftQuietlyAction: FormAction<[lotId: string]> = async (lotId, _before, formData) => {
  onlyPlain(lotId);
  return onForm(formData, {
    permission: 'recall',
    schema: liftQuietlyForm,
    work: ({ data, ...by }) => liftRecall({ lotId, ...data, letters: 0, ...by }),
    after: () => `/workshop/parts/lots/${lotId}?saved=lifted`,
  });
};

type Letter = { text: string; step?: 'look' | 'send' | undefined; seen?: string | undefined };

/** A letter about a lot is shown as it reads before it is sent, and again where it was changed since. */
async function lookThenSend<T extends Letter>(o: {
  formData: FormData;
  schema: z.ZodType<T>;
  send: (letter: T, actor: ReturnType<typeof staffActor>) => Promise<void>;
  after: Route;
}): Promise<FormState> {
  const sender = await senderOf('recall', o.formData);
  if (!sender.ok) return sender.state;
  const parsed = parseForm(o.schema, o.formData);
  if (!parsed.ok) return parsed.state;
  const letter = parsed.data;
  const values = typedValues(o.formData);
  if (letter.step !== 'send') return { done: 'This is the letter. Nothing is sent yet.', values };
  if (letter.seen !== letter.text)
    return { done: 'The letter was changed: this is how it reads now. Nothing is sent yet.', values };
  const outcome = await attempt(() => o.send(letter, staffActor(sender.staff)));
  if (!outcome.ok) return refused(outcome.refusal, values);
  redirect(o.after);
}
