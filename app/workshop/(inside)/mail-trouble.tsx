import type { ReactNode } from 'react';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import type { TroubledMail } from '@/lib/mail/records';
import { movedOnSentence, REMEDY_SENTENCES, remedyOf, WORKSHOP_REMEDY } from '@/lib/mail/rules/bounce';
import { templateWords } from '@/lib/mail/rules/words';
import { may, type Role } from '@/lib/people/rules/roles';

type Shown = {
  mails: readonly TroubledMail[];
  role: Role;
  phone: string;
  /** of the job or the quote whose contact is put right */
  number: string;
  /** the button that sends one again, where there is one on this page */
  again?: (mail: TroubledMail) => ReactNode;
};

/** Letters of a job or a quote that did not reach the customer, or the workshop, with the reason and what to do. */
export function MailTrouble(o: Shown) {
  const ours = o.mails.filter(({ to }) => to === 'workshop');
  const theirs = o.mails.filter(({ to }) => to === 'customer');
  return (
    <>
      {theirs.length === 0 ? null : (
        <Notice kind="stop" heading="The customer has not been told">
          <Letters {...o} mails={theirs} />
          <p>
            {o.phone === '' ? 'No telephone number is known. ' : `Telephone: ${o.phone}. `}
            <TextLink href={`/workshop/customers/${o.number}/contact`}>Correct the contact</TextLink>
          </p>
        </Notice>
      )}
      {ours.length === 0 ? null : (
        <Notice kind="warn" heading="A message to the workshop did not arrive">
          <Letters {...o} mails={ours} />
          {may(o.role, 'settings') ? (
            <p>
              <TextLink href="/workshop/settings/details">Settings, Details</TextLink>
            </p>
          ) : null}
        </Notice>
      )}
    </>
  );
}

function Letters(o: Shown) {
  return (
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
          <p>{mail.to === 'workshop' ? WORKSHOP_REMEDY : REMEDY_SENTENCES[remedyOf(mail.trouble)]}</p>
          {mail.movedTo ? <p>{movedOnSentence(mail.movedTo)}</p> : null}
          {may(o.role, 'mail') ? (
            <p>
              Told some other way?{' '}
              <TextLink href={`/workshop/mail/${mail.id}#told`}>
                {`Keep how, and take “${templateWords(mail.template)}” off this list`}
              </TextLink>
            </p>
          ) : null}
          {o.again?.(mail)}
        </li>
      ))}
    </ul>
  );
}
