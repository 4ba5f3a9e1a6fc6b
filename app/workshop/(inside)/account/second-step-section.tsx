import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Tag } from '@/app/ui/page/tag';
import { beginSecondStepAction, endSecondStepAction, renewBackupCodesAction } from './actions';

/** Turning the second step of signing in on and off; each asks for the password again. */
export function SecondStepSection({ isOn, isAsked }: { isOn: boolean; isAsked: boolean }) {
  return (
    <section aria-labelledby="second-step">
      <h2 id="second-step">Second step</h2>
      <p className="mb-3">
        <Tag tone={isOn ? 'good' : 'warn'}>{isOn ? 'on' : 'off'}</Tag>
      </p>
      {isAsked ? (
        <p className="prose mb-3">
          {isOn
            ? 'This workshop asks everybody for it, so it stays on.'
            : 'This workshop asks everybody for it. Turn it on, then everything else is open to you.'}
        </p>
      ) : null}
      {isOn ? <WhenOn mayEnd={!isAsked} /> : <WhenOff />}
    </section>
  );
}

function WhenOff() {
  return (
    <>
      <p className="prose mb-6">
        With it, signing in also asks for a code from an authenticator app on your phone, so a password that
        leaks is not enough to get in.
      </p>
      <ActionForm action={beginSecondStepAction} label="Turn the second step on">
        <PasswordAgain />
        <SubmitButton
          label="Turn it on"
          consequence="Next: scan a code with the app. It takes two minutes, and signs out every other device."
        />
      </ActionForm>
    </>
  );
}

function WhenOn({ mayEnd }: { mayEnd: boolean }) {
  return (
    <div className="grid gap-6">
      <ActionForm action={renewBackupCodesAction} label="Make new backup codes">
        <ConfirmButton
          label="Make new backup codes"
          question="Make ten new codes?"
          confirm="Make new codes"
          consequence="The old ones stop working at once."
        >
          <PasswordAgain />
        </ConfirmButton>
      </ActionForm>
      {mayEnd ? <TurnOff /> : null}
    </div>
  );
}

function TurnOff() {
  return (
    <ActionForm action={endSecondStepAction} label="Turn the second step off">
      <ConfirmButton
        label="Turn it off"
        question="Sign in with your password alone from now on?"
        confirm="Turn the second step off"
        consequence="Your app’s entry and your backup codes stop working. Every other device is signed out."
      >
        <PasswordAgain />
      </ConfirmButton>
    </ActionForm>
  );
}

function PasswordAgain() {
  return (
    <TextField
      name="password"
      label="Your password"
      type="password"
      autoComplete="current-password"
      width="half"
    />
  );
}
