'use server';
import { redirect } from 'next/navigation';
import type { FormAction } from '@/app/ui/forms/form-state';
import { changePasswordBy } from '@/app/workshop/change-password';
import { whoIsSignedIn } from '../../who';

export const chooseOwnPassword: FormAction = async (_before, formData) => {
  const signedIn = await whoIsSignedIn();
  if (!signedIn) redirect('/workshop/sign-in');
  const problem = await changePasswordBy(signedIn, formData);
  if (problem) return problem;
  redirect('/workshop');
};
