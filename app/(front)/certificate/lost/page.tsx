import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitBar } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { workingDaysWords } from '@/lib/calendar/working';
import { ifMailed } from '@/lib/mail/mail-server';
import { sendAgain } from './actions';

export const metadata: Metadata = { title: 'Lost certificate or private link' };

/** For whoever has lost the paper or the mail: number or serial, and the address we sent it to. */
export default async function LostCertificatePage() {
  const { email, answerDays } = await readWorkshop();
  return (
    <>
      <PageHead
        above={<TextLink href="/certificate">Certificate or claim</TextLink>}
        title="Lost your certificate or your private link?"
        lead="Your cover does not depend on the paper. Tell us one number and your e-mail address, and we send you the way to your certificate or to your job again."
        next={ifMailed(
          'the message comes within a few minutes. It is free.',
          'we keep what you send and answer by hand, since we send no mail yet. It is free.',
        )}
      />
      <ActionForm action={sendAgain} label="Send it to me again">
        <TextField
          name="number"
          label="Certificate, job or claim number"
          hint="It starts with W, J or C and stands on our papers."
          optional
          mono
          autoComplete="off"
          maxLength={1000}
          scan
        />
        <TextField
          name="serial"
          label="Or the serial number, as it stands on the unit"
          hint="Fill in one of the two. Both is fine as well."
          optional
          mono
          autoComplete="off"
          maxLength={60}
          scan
        />
        <TextField
          name="email"
          label="E-mail address"
          hint="The one you gave us with the repair. We only ever write to that one."
          type="email"
          autoComplete="email"
          maxLength={254}
        />
        <SubmitBar
          label="Send it again"
          busy="Sending…"
          consequence="For your safety we give the same answer whether we have found something or not."
        />
      </ActionForm>
      <section aria-labelledby="no-message">
        <h2 id="no-message">If no message comes</h2>
        <p>
          Look among unwanted mail first. Then compare each character with the unit or with an older e-mail
          from us, and try your other addresses.
        </p>
        <p>
          {'Still nothing? Write to us'}
          {email === '' ? '' : ' at '}
          {email === '' ? null : <a href={`mailto:${email}`}>{email}</a>}
          {`. We look for it by hand and answer within ${workingDaysWords(answerDays)}.`}
        </p>
      </section>
    </>
  );
}
