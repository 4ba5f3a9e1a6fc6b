'use server';
import { refresh } from 'next/cache';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { shownIn } from '@/app/ui/forms/shown-in';
import { typedValues } from '@/app/ui/forms/typed-values';
import { onForm } from '@/app/workshop/on-form';
import { attempt } from '@/lib/outcome';
import { addStaff } from '@/lib/people/add-staff';
import { changeStaff } from '@/lib/people/change-staff';
import { resetPassword } from '@/lib/people/reset-password';
import { TEMPORARY_PASSWORD_DAYS } from '@/lib/people/rules/passwords';
import { staffInput } from '@/lib/people/staff-input';
import { saveSettings } from '@/lib/workshop/save-settings';
import { requireSignedIn } from '../../who';
import { askedForm, changeInput, resetInput } from './schema';

const HAND_OVER = `This is the temporary password, shown only now: hand it over in person. It opens the account for ${TEMPORARY_PASSWORD_DAYS} days and is replaced at the first sign-in.`;

export async function addStaffAction(_before: FormState, formData: FormData): Promise<FormState> {
  return onForm({
    permission: 'people',
    formData,
    schema: staffInput,
    work: ({ data, now }) => addStaff(data, now),
    after: ({ temporaryPassword }, { name }) => ({
      done: `${name} is added. ${HAND_OVER}`,
      copied: temporaryPassword,
    }),
  });
}

export async function changeStaffAction(
  id: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(id);
  return onForm({
    permission: 'people',
    formData,
    schema: changeInput,
    work: ({ data }) => changeStaff(shownIn(id, formData), data),
    after: () => ({ done: 'Saved.' }),
  });
}

export async function resetPasswordAction(
  id: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(id);
  return onForm({
    permission: 'people',
    formData,
    schema: resetInput,
    work: ({ data, actor, now }) =>
      resetPassword(id, { now, isSecondStepOff: data.secondStepOff === 'yes', by: actor }),
    after: ({ temporaryPassword }) => ({ done: HAND_OVER, copied: temporaryPassword }),
  });
}

/** Has everybody turn the second step on before anything else, or no longer. */
export async function askForSecondStepAction(_before: FormState, formData: FormData): Promise<FormState> {
  const me = await requireSignedIn('people');
  const parsed = parseForm(askedForm, formData);
  if (!parsed.ok) return parsed.state;
  const { asked, seenAt } = parsed.data;
  // Who has seen it work asks others for it; and the one who could take it back is never the one led away.
  if (asked && !me.hasSecondStep) {
    const errors = { asked: ['Turn your own second step on first, on your account page'] };
    return { errors, values: typedValues(formData) };
  }
  const outcome = await attempt(() => saveSettings({ asksSecondStep: asked }, seenAt));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  refresh();
  return { done: asked ? 'Everybody is asked for it from now on.' : 'Saved. Each decides.' };
}
