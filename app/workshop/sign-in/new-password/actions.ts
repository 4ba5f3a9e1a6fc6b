'use server';
import { redirect } from 'next/navigation';
import type { FormState } from '@/app/ui/forms/form-state';
import { changePasswordBy } from '@/app/workshop/change-password';
import { whoIsSignedIn } from '../../who';

export async function chooseOwnPassword(_before: FormState, formData: FormData): Promise<FormState> {
  const signedIn = await whoIsSignedIn();
  if (!signedIn) redirect('/workshop/sign-in');
  const problem = await changePasswordBy(signedIn, formData);
  if (problem) return problem;
  redirect('/workshop');
}
