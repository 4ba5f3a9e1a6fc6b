'use server';
import { redirect } from 'next/navigation';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormAction } from '@/app/ui/forms/form-state';
import { requireStaff } from '@/app/workshop/who';
import { day } from '@/lib/calendar/day';
import { decideUnclaimed } from '@/lib/jobs/decide-unclaimed';
import { movePromise } from '@/lib/jobs/move-promise';
import { retryMail } from '@/lib/mail/retry';
import { attempt } from '@/lib/outcome';
import { onJob } from './action-kit';
import { decisionForm, promiseForm } from './keeping-schema';

export const decideOnUnit: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'settings',
    schema: decisionForm,
    part: 'moves',
    work: ({ data, ...call }) =>
      decideUnclaimed({ ...call, ...data, until: data.until === '' ? null : day(data.until) }),
  });

export const moveThePromise: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'take-in',
    schema: promiseForm,
    part: 'moves',
    work: ({ data, ...call }) => movePromise({ ...call, to: day(data.to), reason: data.reason }),
  });

/** The sheet says afterwards that it was done: with the message no longer in trouble, its own form is gone. */
export const sendAgain: FormAction<[number: string, mailId: string]> = async (
  number,
  mailId,
  _before,
  _formData,
) => {
  onlyPlain(number, mailId);
  await requireStaff('mail');
  const outcome = await attempt(() => retryMail(mailId));
  if (!outcome.ok) return refused(outcome.refusal);
  redirect(`/workshop/jobs/${encodeURIComponent(number)}?saved=mail`);
};
