'use server';
import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { readWorkshop } from '@/app/read-workshop';
import { refused } from '@/app/refused';
import type { FormAction, FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { auth } from '@/lib/people/auth';
import { endOtherSessions, endSession, signOutEverywhere } from '@/lib/people/sessions';
import {
  beginSecondStep,
  confirmSecondStep,
  endSecondStep,
  renewBackupCodes,
} from '@/lib/people/turn-second-step';
import { changePasswordBy } from '../../change-password';
import { requireSignedIn, requireStaff } from '../../who';
import { codeSchema, passwordSchema, sessionSchema } from './schema';

const STAYS_ON =
  'This workshop asks everybody for the second step. An owner can change that on the People page';

export const changeOwnPassword: FormAction = async (_before, formData) => {
  const staff = await requireStaff();
  const problem = await changePasswordBy(staff, formData);
  return problem ?? { done: 'Your password is changed. Other devices are signed out.' };
};

export const beginSecondStepAction: FormAction = async (_before, formData) => {
  const problem = await withPassword(formData, beginSecondStep);
  if (problem) return problem;
  redirect('/workshop/account/second-step');
};

export const confirmSecondStepAction: FormAction = async (_before, formData) => {
  const { id: userId, sessionId } = await requireSignedIn(undefined, { isSettingUp: true });
  const parsed = parseForm(codeSchema, formData);
  if (!parsed.ok) return parsed.state;
  const { code } = parsed.data;
  const requestHeaders = await headers();
  const outcome = await attempt(() =>
    confirmSecondStep({ userId, sessionId, code, headers: requestHeaders, now: now() }),
  );
  if (!outcome.ok) return refused(outcome.refusal);
  redirect('/workshop/account/backup-codes');
};

export const endSecondStepAction: FormAction = async (_before, formData) => {
  await requireSignedIn();
  if ((await readWorkshop()).asksSecondStep) return { message: STAYS_ON };
  const problem = await withPassword(formData, endSecondStep);
  if (problem) return problem;
  // The form that was sent is gone from the page now, and an answer in it would be gone too.
  redirect('/workshop/account#second-step');
};

export const renewBackupCodesAction: FormAction = async (_before, formData) => {
  const problem = await withPassword(formData, renewBackupCodes);
  if (problem) return problem;
  redirect('/workshop/account/backup-codes');
};

export const endSessionAction: FormAction = async (_before, formData) => {
  const staff = await requireStaff();
  const parsed = parseForm(sessionSchema, formData);
  if (!parsed.ok) return parsed.state;
  await endSession(staff.id, parsed.data.session);
  redirect('/workshop/account');
};

export const endOtherSessionsAction: FormAction = async (_before, _formData) => {
  const { id, sessionId } = await requireSignedIn();
  await endOtherSessions(id, sessionId);
  redirect('/workshop/account#sessions');
};

export const signOutAction: FormAction = async (_before, _formData) => {
  await auth().api.signOut({ headers: await headers() });
  redirect('/workshop/sign-in?out=yes');
};

export const signOutEverywhereAction: FormAction = async (before, formData) => {
  const { id } = await requireSignedIn(undefined, { isSettingUp: true });
  await signOutEverywhere(id);
  return signOutAction(before, formData);
};

type WithPassword = (asking: {
  userId: string;
  sessionId: string;
  password: string;
  headers: Headers;
  now: Date;
}) => Promise<void>;

async function withPassword(formData: FormData, verb: WithPassword): Promise<FormState | null> {
  const { id: userId, sessionId } = await requireSignedIn(undefined, { isSettingUp: true });
  const parsed = parseForm(passwordSchema, formData);
  if (!parsed.ok) return parsed.state;
  const { password } = parsed.data;
  const requestHeaders = await headers();
  const outcome = await attempt(() =>
    verb({ userId, sessionId, password, headers: requestHeaders, now: now() }),
  );
  return outcome.ok ? null : refused(outcome.refusal);
}
