'use server';
import { refresh } from 'next/cache';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { onForm } from '@/app/workshop/on-form';
import { markBounced } from '@/lib/mail/mark-bounced';
import { markTold } from '@/lib/mail/mark-told';
import { retryMail } from '@/lib/mail/retry';
import { attempt } from '@/lib/outcome';
import { requireStaff } from '../../who';
import { bounceForm, toldForm } from './schema';

export async function sendAgainAction(
  id: string,
  _before: FormState,
  _formData: FormData,
): Promise<FormState> {
  onlyPlain(id);
  await requireStaff('mail');
  const outcome = await attempt(() => retryMail(id));
  refresh();
  return outcome.ok ? { done: 'Waiting again. It leaves within seconds.' } : refused(outcome.refusal);
}

export async function cameBackAction(id: string, _before: FormState, formData: FormData): Promise<FormState> {
  onlyPlain(id);
  return onForm({
    permission: 'mail',
    formData,
    schema: bounceForm,
    work: ({ data, now }) => markBounced({ mailId: id, note: data.note, now }),
    after: () => ({ done: 'Kept. It stands on the job and on today’s page until it is sent again.' }),
  });
}

export async function toldAction(id: string, _before: FormState, formData: FormData): Promise<FormState> {
  onlyPlain(id);
  return onForm({
    permission: 'mail',
    formData,
    schema: toldForm,
    work: ({ data, actor, now }) => markTold({ mailId: id, note: data.note, actor, now }),
    after: () => ({ done: 'Kept. It needs no hand any more.' }),
  });
}
