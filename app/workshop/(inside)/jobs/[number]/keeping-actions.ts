'use server';
import type { FormState } from '@/app/ui/forms/form-state';
import { day } from '@/lib/calendar/day';
import { decideUnclaimed } from '@/lib/jobs/decide-unclaimed';
import { movePromise } from '@/lib/jobs/move-promise';
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
