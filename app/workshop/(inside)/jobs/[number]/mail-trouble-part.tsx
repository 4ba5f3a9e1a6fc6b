import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { hasMailServer } from '@/lib/mail/mail-server';
import { troubledMail } from '@/lib/mail/records';
import { REMEDY_SENTENCES, remedyOf } from '@/lib/mail/rules/bounce';
import { templateWords } from '@/lib/mail/rules/words';
import { may, type Role } from '@/lib/people/rules/roles';
import { sendAgain } from './keeping-actions';
import type { SheetProps } from './open-sheet';

/** Letters about this job that did not reach the customer, with the reason and what to do. */
export async function MailTroublePart({ job, role }: SheetProps & { role: Role }) {
  const mails = await troubledMail(job.id);
  if (mails.length === 0) return null;
  return (
    <Notice kind="stop" heading="The customer has not been told">
      <ul>
        {mails.map((mail) => (
          <li key={mail.id}>
            <p>
              {may(role, 'mail') ? (
                <TextLink href={`/workshop/mail/${mail.id}`}>{templateWords(mail.template)}</TextLink>
              ) : (
                <strong>{templateWords(mail.template)}</strong>
              )}
              {` to ${mail.toAddress || 'an address that was removed'} ${mail.isBounced ? 'came back' : 'was given up'}: ${mail.trouble}`}
            </p>
            <p>{REMEDY_SENTENCES[remedyOf(mail.trouble)]}</p>
            {may(role, 'mail') && hasMailServer() && mail.toAddress !== '' ? (
              <ActionForm
                action={sendAgain.bind(null, job.number, mail.id)}
                label={`Send again: ${templateWords(mail.template)}`}
              >
                <SubmitButton kind="second" label="Send again" busy="Queueing…" />
              </ActionForm>
            ) : null}
          </li>
        ))}
      </ul>
      <p>
        {job.customer.phone === '' ? 'No telephone number is known. ' : `Telephone: ${job.customer.phone}. `}
        <TextLink href={`/workshop/customers/${job.number}/contact`}>Correct the contact</TextLink>
      </p>
    </Notice>
  );
}
