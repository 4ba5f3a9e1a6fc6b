'use server';
import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { readWorkshop } from '@/app/read-workshop';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
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

export async function changeOwnPassword(_before: FormState, formData: FormData): Promise<FormState> {
  const staff = await requireStaff();
  const problem = await changePasswordBy(staff, formData);
  return problem ?? { done: 'Your password is changed. Other devices are signed out.' };
}

export async function beginSecondStepAction(_before: FormState, formData: FormData): Promise<FormState> {
  const problem = await withPassword(formData, beginSecondStep);
  if (problem) return problem;
  redirect('/workshop/account/second-step');
}

export async function confirmSecondStepAction(_before: FormState, formData: FormData): Promise<FormState> {
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
}

export async function endSecondStepAction(_before: FormState, formData: FormData): Promise<FormState> {
  await requireSignedIn();
  if ((await readWorkshop()).asksSecondStep) return { message: STAYS_ON };
  const problem = await withPassword(formData, endSecondStep);
  if (problem) return problem;
  // The form that was sent is gone from the page now, and an answer in it would be gone too.
  redirect('/workshop/account#second-step');
}

export async function renewBackupCodesAction(_before: FormState, formData: FormData): Promise<FormState> {
  const problem = await withPassword(formData, renewBackupCodes);
  if (problem) return problem;
  redirect('/workshop/account/backup-codes');
}

export async function endSessionAction(_before: FormState, formData: FormData): Promise<FormState> {
  const staff = await requireStaff();
  const parsed = parseForm(sessionSchema, formData);
  if (!parsed.ok) return parsed.state;
  await endSession(staff.id, parsed.data.session);
  redirect('/workshop/account');
}

export async function endOtherSessionsAction(_before: FormState, _formData: FormData): Promise<FormState> {
  const { id, sessionId } = await requireSignedIn();
  await endOtherSessions(id, sessionId);
  redirect('/workshop/account#sessions');
}

export async function signOutAction(_before: FormState, _formData: FormData): Promise<FormState> {
  await auth().api.signOut({ headers: await headers() });
  redirect('/workshop/sign-in?out=yes');
}

export async function signOutEverywhereAction(before: FormState, formData: FormData): Promise<FormState> {
  const { id } = await requireSignedIn(undefined, { isSettingUp: true });
  await signOutEverywhere(id);
  return signOutAction(before, formData);
}

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
