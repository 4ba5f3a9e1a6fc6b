import { TextField } from '@/app/ui/forms/text-field';
import { PASSWORD_MIN } from '@/lib/people/rules/passwords';

type PasswordFieldsProps = {
  /** password managers file the new password under this address */
  email: string;
  /** what the password is called that is given up */
  present: string;
  width?: 'half' | undefined;
};

/** The password that is given up, and the new one. */
export function PasswordFields({ email, present, width }: PasswordFieldsProps) {
  return (
    <>
      <input type="hidden" name="username" autoComplete="username" value={email} readOnly />
      <TextField
        name="currentPassword"
        label={present}
        type="password"
        autoComplete="current-password"
        width={width}
      />
      <TextField
        name="newPassword"
        label="New password"
        hint={`At least ${PASSWORD_MIN} characters. A few words that only you would put together are good.`}
        type="password"
        autoComplete="new-password"
        width={width}
      />
    </>
  );
}
