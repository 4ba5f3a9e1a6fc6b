import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitBar } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { localRoute } from '../local-route';
import { EntryFrame } from '../sign-in/entry-frame';
import { whoIsSignedIn } from '../who';
import { secondStepAction } from './actions';

export const metadata: Metadata = { title: 'Second step' };

type Props = { searchParams: Promise<{ then?: string | string[] }> };

export default async function SecondStepPage({ searchParams }: Props) {
  const { then } = await searchParams;
  const goTo = localRoute(then);
  if (await whoIsSignedIn()) redirect(goTo);
  const { name } = await readWorkshop();
  const back = `/workshop/sign-in?then=${encodeURIComponent(goTo)}` as const;
  return (
    <EntryFrame workshopName={name} title="Second step">
      <ActionForm action={secondStepAction} hidden={{ goTo }}>
        <TextField
          name="code"
          label="Code"
          hint="The six digits in your authenticator app, or one of your backup codes."
          autoComplete="one-time-code"
          width="short"
          mono
          maxLength={40}
        />
        <SubmitBar
          label="Go on"
          busy="Checking…"
          consequence="A backup code works once."
          second={{ href: back, label: 'Sign in again' }}
        />
      </ActionForm>
    </EntryFrame>
  );
}
