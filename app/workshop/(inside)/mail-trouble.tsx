import type { ReactNode } from 'react';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import type { TroubledMail } from '@/lib/mail/records';
import { REMEDY_SENTENCES, remedyOf } from '@/lib/mail/rules/bounce';
import { templateWords } from '@/lib/mail/rules/words';
import { may, type Role } from '@/lib/people/rules/roles';

/** Letters that did not reach the customer of a job or a quote, with the reason and what to do. */
export function MailTrouble(o: {
  mails: readonly TroubledMail[];
  role: Role;
  phone: string;
  /** of the job or the quote whose contact is put right */
  number: string;
  /** the button that sends one again, where there is one on this page */
  again?: (mail: TroubledMail) => ReactNode;
}) {
  if (o.mails.length === 0) return null;
  return (
    <Notice kind="stop" heading="The customer has not been told">
      <ul>
        {o.mails.map((mail) => (
          <li key={mail.id}>
            <p>
              {may(o.role, 'mail') ? (
                <TextLink href={`/workshop/mail/${mail.id}`}>{templateWords(mail.template)}</TextLink>
              ) : (
                <strong>{templateWords(mail.template)}</strong>
              )}
              {` to ${mail.toAddress || 'an address that was removed'} ${mail.isBounced ? 'came back' : 'was given up'}: ${mail.trouble}`}
            </p>
            <p>{REMEDY_SENTENCES[remedyOf(mail.trouble)]}</p>
            {o.again?.(mail)}
          </li>
        ))}
      </ul>
      <p>
        {o.phone === '' ? 'No telephone number is known. ' : `Telephone: ${o.phone}. `}
        <TextLink href={`/workshop/customers/${o.number}/contact`}>Correct the contact</TextLink>
      </p>
    </Notice>
  );
}
