import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { readWorkshop } from '@/app/read-workshop';
import { Qr } from '@/app/ui/docket/qr';
import { ActionForm } from '@/app/ui/forms/action-form';
import { CountField } from '@/app/ui/forms/count-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { keyFromAddress } from '@/lib/people/rules/otpauth';
import { readPendingKey } from '@/lib/people/turn-second-step';
import { requireStaff } from '../../../who';
import { confirmSecondStepAction } from '../actions';

export const metadata: Metadata = { title: 'Turn the second step on' };

export default async function TurnOnPage() {
  const me = await requireStaff(undefined, { isSettingUp: true });
  const { name } = await readWorkshop();
  const address = await readPendingKey(me, name);
  if (!address) redirect('/workshop/account');
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/account">Your account</TextLink>}
        title="Turn the second step on"
        next="after the first code that fits you get ten backup codes to keep on paper."
      />
      <ol className="grid gap-8">
        <li>
          <h2>1. Give the key to your app</h2>
          <p className="prose mb-3">
            Open an authenticator app on your phone and scan this. On the phone itself, follow the link or
            type the key.
          </p>
          <div className="[&>svg]:size-60">
            <Qr text={address} alt="QR code with the key for your authenticator app" />
          </div>
          <p className="mt-3">
            Key: <span className="number-text">{keyFromAddress(address)}</span>
          </p>
          <p>
            <a href={address}>Open the app on this device</a>
          </p>
        </li>
        <li>
          <h2 className="mb-3">2. Enter the code that it shows</h2>
          <ActionForm action={confirmSecondStepAction}>
            <CountField
              name="code"
              label="Code"
              hint="Six digits; a new one every half minute."
              autoComplete="one-time-code"
              mono
              maxLength={20}
            />
            <SubmitButton
              label="Turn it on"
              busy="Checking…"
              consequence="From now on signing in asks for such a code."
            />
            <p>
              <TextLink href="/workshop/account">Leave it off</TextLink>
            </p>
          </ActionForm>
        </li>
      </ol>
    </>
  );
}
