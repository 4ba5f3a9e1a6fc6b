'use server';
import { refresh } from 'next/cache';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { retryMail } from '@/lib/mail/retry';
import { attempt } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { requireStaff } from '../../who';

export async function sendAgainAction(
  id: string,
  _before: FormState,
  _formData: FormData,
): Promise<FormState> {
  await requireStaff(rolesThatMay('mail'));
  const outcome = await attempt(() => retryMail(id));
  refresh();
  return outcome.ok ? { done: 'Waiting again. It leaves within seconds.' } : refused(outcome.refusal);
}
