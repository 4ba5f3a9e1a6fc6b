'use server';
import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import type { FormAction } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { now } from '@/lib/clock';
import { passSecondStep, type SecondStepAnswer } from '@/lib/people/second-step';
import { localRoute } from '../local-route';
import { secondStepForm } from './schema';

const SENTENCES: Record<Exclude<SecondStepAnswer, 'passed'>, string> = {
  wrong: 'This code does not fit. Take the one your app shows now.',
  used: 'This code was used before. Sign in again with the next one.',
  locked: 'Too many wrong codes. Wait an hour, then sign in again.',
  'start-again': 'This sign-in took too long or had too many wrong codes. Sign in again.',
};

export const secondStepAction: FormAction = async (_before, formData) => {
  const parsed = parseForm(secondStepForm, formData);
  if (!parsed.ok) return parsed.state;
  const answer = await passSecondStep({ code: parsed.data.code, headers: await headers(), now: now() });
  if (answer === 'wrong') return { errors: { code: [SENTENCES.wrong] } };
  if (answer !== 'passed') return { message: SENTENCES[answer] };
  redirect(localRoute(parsed.data.goTo));
};
