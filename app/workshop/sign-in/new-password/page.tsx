import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitBar } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { PASSWORD_MIN } from '@/lib/people/rules/passwords';
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
      <p className="mb-6">Somebody else has seen the one you signed in with. Replace it before you go on.</p>
      <ActionForm action={chooseOwnPassword}>
        {/* Password managers file the new password under this address. */}
        <input type="hidden" name="username" autoComplete="username" value={signedIn.email} readOnly />
        <TextField
          name="currentPassword"
          label="Temporary password"
          type="password"
          autoComplete="current-password"
        />
        <TextField
          name="newPassword"
          label="New password"
          hint={`At least ${PASSWORD_MIN} characters. A few words that only you would put together are good.`}
          type="password"
          autoComplete="new-password"
        />
        <SubmitBar label="Use this password" busy="Changing…" consequence="Then you are in the workshop." />
      </ActionForm>
    </EntryFrame>
  );
}
