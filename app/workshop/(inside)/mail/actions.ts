'use server';
import { refresh } from 'next/cache';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormAction } from '@/app/ui/forms/form-state';
import { onForm } from '@/app/workshop/on-form';
import { markBounced } from '@/lib/mail/mark-bounced';
import { markTold } from '@/lib/mail/mark-told';
import { retryMail } from '@/lib/mail/retry';
import { attempt } from '@/lib/outcome';
import { requireStaff } from '../../who';
import { bounceForm, toldForm } from './schema';

export const sendAgainAction: FormAction<[id: string]> = async (id, _before, _formData) => {
  onlyPlain(id);
  await requireStaff('mail');
  const outcome = await attempt(() => retryMail(id));
  refresh();
  return outcome.ok ? { done: 'Waiting again. It leaves within seconds.' } : refused(outcome.refusal);
};

export const cameBackAction: FormAction<[id: string]> = async (id, _before, formData) => {
  onlyPlain(id);
  return onForm(formData, {
    permission: 'mail',
    schema: bounceForm,
    work: ({ data, now }) => markBounced({ mailId: id, note: data.note, now }),
    after: () => ({ done: 'Kept. It stands on the job and on today’s page until it is sent again.' }),
  });
};

export const toldAction: FormAction<[id: string]> = async (id, _before, formData) => {
  onlyPlain(id);
  return onForm(formData, {
    permission: 'mail',
    schema: toldForm,
    work: ({ data, actor, now }) => markTold({ mailId: id, note: data.note, actor, now }),
    after: () => ({ done: 'Kept. It needs no hand any more.' }),
  });
};
