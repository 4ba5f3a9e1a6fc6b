'use server';
import { redirect } from 'next/navigation';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { requireStaff } from '@/app/workshop/who';
import { day } from '@/lib/calendar/day';
import { decideUnclaimed } from '@/lib/jobs/decide-unclaimed';
import { movePromise } from '@/lib/jobs/move-promise';
import { retryMail } from '@/lib/mail/retry';
import { attempt } from '@/lib/outcome';
import { onJob } from './action-kit';
import { decisionForm, promiseForm } from './keeping-schema';

export async function decideOnUnit(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onJob({
    permission: 'settings',
    number,
    schema: decisionForm,
    formData,
    part: 'moves',
    work: ({ data, ...call }) =>
      decideUnclaimed({ ...call, ...data, until: data.until === '' ? null : day(data.until) }),
  });
}

export async function moveThePromise(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onJob({
    permission: 'take-in',
    number,
    schema: promiseForm,
    formData,
    part: 'moves',
    work: ({ data, ...call }) => movePromise({ ...call, to: day(data.to), reason: data.reason }),
  });
}

/** The sheet says afterwards that it was done: with the message no longer in trouble, its own form is gone. */
export async function sendAgain(
  number: string,
  mailId: string,
  _before: FormState,
  _formData: FormData,
): Promise<FormState> {
  onlyPlain(number, mailId);
  await requireStaff('mail');
  const outcome = await attempt(() => retryMail(mailId));
  if (!outcome.ok) return refused(outcome.refusal);
  redirect(`/workshop/jobs/${encodeURIComponent(number)}?saved=mail`);
}
