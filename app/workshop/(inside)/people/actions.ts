'use server';
import { refresh } from 'next/cache';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormAction } from '@/app/ui/forms/form-state';
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

export const addStaffAction: FormAction = async (_before, formData) =>
  onForm(formData, {
    permission: 'people',
    schema: staffInput,
    work: ({ data, now }) => addStaff(data, now),
    after: ({ temporaryPassword }, { name }) => ({
      done: `${name} is added. ${HAND_OVER}`,
      copied: temporaryPassword,
    }),
  });

export const changeStaffAction: FormAction<[id: string]> = async (id, _before, formData) => {
  onlyPlain(id);
  return onForm(formData, {
    permission: 'people',
    schema: changeInput,
    work: ({ data }) => changeStaff(shownIn(id, formData), data),
    after: () => ({ done: 'Saved.' }),
  });
};

export const resetPasswordAction: FormAction<[id: string]> = async (id, _before, formData) => {
  onlyPlain(id);
  return onForm(formData, {
    permission: 'people',
    schema: resetInput,
    work: ({ data, actor, now }) =>
      resetPassword(id, { now, isSecondStepOff: data.secondStepOff === 'yes', by: actor }),
    after: ({ temporaryPassword }) => ({ done: HAND_OVER, copied: temporaryPassword }),
  });
};

/** Has everybody turn the second step on before anything else, or no longer. */
export const askForSecondStepAction: FormAction = async (_before, formData) => {
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
};
