import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';

import { type Fact, Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { formatInstant } from '@/lib/calendar/format';
import { hasMailServer, type Preview, previewMail } from '@/lib/mail/preview';
import { templateWords } from '@/lib/mail/rules/words';
import { showNumber } from '@/lib/numbers/job-number';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { readWorkshop } from '@/lib/workshop/records';
import { requireStaff } from '../../../who';
import { sendAgainAction } from '../actions';
import { DrawnMessage } from '../drawn-message';
import { STATE_WORDS, StateTag } from '../state-tag';

export const metadata: Metadata = { title: 'Message' };

export default async function MessagePage({ params }: { params: Promise<{ id: string }> }) {
  await requireStaff(rolesThatMay('mail'));
  const { id } = await params;
  const preview = await previewMail(id);
  if (!preview) nothingHere();
  const workshop = await readWorkshop();
  const { mail, drawn } = preview;
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/mail">Mail</TextLink>}
        title={drawn?.subject ?? templateWords(mail.template)}
        lead={STATE_WORDS[mail.state].meaning}
      />
      <Facts items={factsOf(preview, { locale: workshop.locale, zone: workshop.timeZone })} />
      {mail.state === 'sent' || mail.state === 'sending' || !hasMailServer() ? null : (
        <div className="mt-6">
          <ActionForm action={sendAgainAction.bind(null, mail.id)} label="Send this message again">
            <SubmitButton
              label="Send again"
              busy="Queueing…"
              consequence={`Hands it to the mail server for ${mail.toAddress} now, and tries again while that fails.`}
            />
          </ActionForm>
        </div>
      )}
      {drawn ? (
        <>
          <p className="mt-6 max-w-[42rem]">
            Drawn now, from the job as it stands. The address in it opens the customer’s own page: what is
            done there counts as done by the customer.
          </p>
          <DrawnMessage drawn={drawn} />
        </>
      ) : (
        <div className="mt-6">
          <Notice kind="stop" heading="This message cannot be drawn">
            <p>Its records do not fit what this version of the program knows. It cannot be sent.</p>
          </Notice>
        </div>
      )}
    </>
  );
}

function factsOf({ mail, drawn }: Preview, clock: { locale: string; zone: string }): Fact[] {
  const facts: Fact[] = [
    { term: 'State', text: <StateTag state={mail.state} /> },
    { term: 'To', text: mail.toAddress },
  ];
  if (drawn) facts.push({ term: 'From', text: `${drawn.from.name} <${drawn.from.address}>` });
  if (drawn?.replyTo) facts.push({ term: 'Answers go to', text: drawn.replyTo });
  if (mail.jobNumber) {
    facts.push({
      term: 'Job',
      text: (
        <TextLink href={`/workshop/jobs/${mail.jobNumber}`}>
          <NumberText text={showNumber(mail.jobNumber)} />
        </TextLink>
      ),
    });
  }
  if (mail.quoteNumber) {
    facts.push({
      term: 'Quote',
      text: (
        <TextLink href={`/workshop/quotes/${mail.quoteNumber}`}>
          <NumberText text={showNumber(mail.quoteNumber)} />
        </TextLink>
      ),
    });
  }
  facts.push({ term: 'Queued', text: formatInstant(mail.queuedAt, clock) });
  if (mail.sentAt) facts.push({ term: 'Sent', text: formatInstant(mail.sentAt, clock) });
  facts.push({ term: 'Tries', text: String(mail.attempts) });
  if (mail.lastError) facts.push({ term: 'Last reason', text: mail.lastError });
  facts.push(
    { term: 'Message-ID', text: <NumberText text={mail.messageId} /> },
    { term: 'Auto-Submitted', text: <NumberText text="auto-generated" /> },
  );
  return facts;
}
