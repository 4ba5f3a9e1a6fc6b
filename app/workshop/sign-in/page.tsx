import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitBar } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Notice } from '@/app/ui/page/notice';
import { TEMPORARY_PASSWORD_DAYS } from '@/lib/people/rules/passwords';
import { localRoute } from '../local-route';
import { whoIsSignedIn } from '../who';
import { signInAction } from './actions';
import { EntryFrame } from './entry-frame';

export const metadata: Metadata = { title: 'Sign in' };

type Props = { searchParams: Promise<{ then?: string | string[]; out?: string }> };

export default async function SignInPage({ searchParams }: Props) {
  const { then, out } = await searchParams;
  const goTo = localRoute(then);
  if (await whoIsSignedIn()) redirect(goTo);
  const { name } = await readWorkshop();
  return (
    <EntryFrame workshopName={name} title="Sign in to the workshop">
      {out === undefined ? null : (
        <div className="mb-6">
          <Notice kind="good" role="status">
            <p>You are signed out.</p>
          </Notice>
        </div>
      )}
      <ActionForm action={signInAction} hidden={{ goTo }}>
        <TextField name="email" label="E-mail address" type="email" autoComplete="username" />
        <TextField name="password" label="Password" type="password" autoComplete="current-password" />
        <SubmitBar
          label="Sign in"
          busy="Signing in…"
          consequence="You stay signed in for twelve hours, or until nobody has clicked for four."
        />
      </ActionForm>
      <details className="mt-6">
        <summary>You cannot sign in?</summary>
        <div className="prose mt-3">
          <p>
            The owner gives you a new temporary password on the People page. It opens your account for{' '}
            {TEMPORARY_PASSWORD_DAYS} days, and you choose your own when you first use it.
          </p>
          <p>
            An owner who is locked out makes a new password on the machine that runs this program; its guide
            says how, under “owner:reset”.
          </p>
          <p>Customers need no account: the link in our e-mails opens your repair.</p>
        </div>
      </details>
    </EntryFrame>
  );
}
