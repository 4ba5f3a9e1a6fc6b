import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitBar } from '@/app/ui/forms/submit';
import { PasswordFields } from '../../password-fields';
import { whoIsSignedIn } from '../../who';
import { EntryFrame } from '../entry-frame';
import { chooseOwnPassword } from './actions';

export const metadata: Metadata = { title: 'Choose your own password' };

export default async function NewPasswordPage() {
  const signedIn = await whoIsSignedIn();
  if (!signedIn) redirect('/workshop/sign-in');
  if (!signedIn.hasTemporaryPassword) redirect('/workshop');
  const { name } = await readWorkshop();
  return (
    <EntryFrame workshopName={name} title="Choose your own password">
      <p className="mb-6">
        The one you signed in with was shown on a screen to get you in. Replace it before you go on.
      </p>
      <ActionForm action={chooseOwnPassword}>
        <PasswordFields email={signedIn.email} present="Temporary password" />
        <SubmitBar label="Use this password" busy="Changing…" consequence="Then you are in the workshop." />
      </ActionForm>
    </EntryFrame>
  );
}
