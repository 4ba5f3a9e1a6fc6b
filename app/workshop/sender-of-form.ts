import 'server-only';
import { headers } from 'next/headers';
import type { FormState } from '@/app/ui/forms/form-state';
import { typedValues } from '@/app/ui/forms/typed-values';
import type { Permission } from '@/lib/people/rules/roles';
import { requireStaff, type Staff, whoIsSignedIn } from './who';

export type Sender = { ok: true; staff: Staff } | { ok: false; state: FormState };

/**
 * Who sends a form in which something is typed. `requireStaff` leads somebody whose session has ended away to sign in, and the
 * form is lost; here they are told, and may send the same form again once they have signed in beside it (WCAG 2.2, 2.2.1).
 * Without script the page is made anew with the answer, which it is for nobody without a session: that one is led away as before.
 */
export async function senderOf(
  permission: Permission,
  formData: FormData,
  arrays?: readonly string[],
): Promise<Sender> {
  const isByScript = (await headers()).has('next-action');
  if (isByScript && !(await whoIsSignedIn())) return { ok: false, state: signedOut(formData, arrays) };
  return { ok: true, staff: await requireStaff(permission) };
}

function signedOut(formData: FormData, arrays?: readonly string[]): FormState {
  return {
    message:
      'You were signed out, so nothing is saved yet. What you typed is still here: sign in again in another tab, then come back and press the button once more.',
    first: { href: '/workshop/sign-in', label: 'Sign in in another tab' },
    values: typedValues(formData, arrays),
  };
}
