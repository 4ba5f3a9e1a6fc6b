'use server';
import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import type { FormAction } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { now } from '@/lib/clock';
import { signIn } from '@/lib/people/sign-in';
import { localRoute } from '../local-route';
import { signInSchema } from './schema';

// One sentence for every reason, so that it tells nobody which addresses exist.
const REFUSED = 'Address and password do not fit together. Check both and try again.';

export const signInAction: FormAction = async (_before, formData) => {
  const parsed = parseForm(signInSchema, formData);
  if (!parsed.ok) return parsed.state;
  const { email, password } = parsed.data;
  const then = localRoute(parsed.data.goTo);
  const answer = await signIn({ email, password, headers: await headers(), now: now() });
  switch (answer.outcome) {
    case 'refused':
      return { message: REFUSED, values: { email } };
    case 'wait':
      return { message: waitSentence(answer.seconds), values: { email } };
    case 'second-step':
      redirect(`/workshop/second-step?then=${encodeURIComponent(then)}`);
      break;
    case 'signed-in':
      redirect(then);
  }
};

function waitSentence(seconds: number): string {
  const minutes = Math.ceil(seconds / 60);
  return `Too many tries. Wait ${minutes === 1 ? 'a minute' : `${minutes} minutes`}, then try again.`;
}
