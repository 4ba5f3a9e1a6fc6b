import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { type Fact, Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { NumberLink } from '@/app/workshop/number-link';
import { formatInstant } from '@/lib/calendar/format';
import { hasMailServer } from '@/lib/mail/mail-server';
import { type Preview, previewMail } from '@/lib/mail/preview';
import { movedOnSentence, REMEDY_SENTENCES, remedyOf, WORKSHOP_REMEDY } from '@/lib/mail/rules/bounce';
import { isInTrouble, mayGoAgain } from '@/lib/mail/rules/standing';
import { isToWorkshop, templateWords } from '@/lib/mail/rules/words';
import { requireStaff } from '../../../who';
import { cameBackAction, sendAgainAction, toldAction } from '../actions';
import { DrawnMessage } from '../drawn-message';
import { STATE_WORDS, StateTag, standingOf } from '../state-tag';

const readOnce = cache(previewMail);

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff('mail');
  const found = await readOnce((await params).id);
  return { title: found ? (found.drawn?.subject ?? templateWords(found.mail.template)) : 'Not found' };
}

export default async function MessagePage({ params }: Props) {
  await requireStaff('mail');
  const { id } = await params;
  const preview = await readOnce(id);
  if (!preview) nothingHere();
  const workshop = await readWorkshop();
  const { mail, drawn } = preview;
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/mail">Mail</TextLink>}
        title={drawn?.subject ?? templateWords(mail.template)}
        lead={STATE_WORDS[standingOf(mail)].meaning}
      />
      <Facts items={factsOf(preview, { locale: workshop.locale, zone: workshop.timeZone })} />
      <WhatToDo mail={mail} />
      {mayBeSentAgain(mail) ? (
        <div className="mt-6">
          <ActionForm action={sendAgainAction.bind(null, mail.id)} label="Send this message again">
            <SubmitButton
              label="Send again"
              busy="Queueing…"
              consequence={`Hands it to the mail server for ${mail.toAddress} now, and tries again while that fails.`}
            />
          </ActionForm>
        </div>
      ) : null}
      {mail.state === 'sent' && !mail.bouncedAt ? <CameBack id={mail.id} /> : null}
      {isInTrouble(mail) && !mail.toldAt ? <Told id={mail.id} /> : null}
      {drawn ? (
        <>
          <p className="mt-6 max-w-[42rem]">
            Drawn now, from the job as it stands. Its button opens the customer’s own page, where only they
            answer, so it is not to be pressed here.{' '}
            {mail.jobNumber ? 'What they told you is written down on the job.' : null}
            {hasMailServer() ? null : ' No message leaves yet, so the address stands there to be handed on.'}
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

function mayBeSentAgain(mail: Preview['mail']): boolean {
  return hasMailServer() && mail.toAddress !== '' && mayGoAgain(mail);
}

function WhatToDo({ mail }: { mail: Preview['mail'] }) {
  const trouble = mail.bouncedAt ? mail.bounceNote : mail.state === 'failed' ? mail.lastError : null;
  return (
    <>
      {trouble ? (
        <p className="mt-6">
          {isToWorkshop(mail.template) ? WORKSHOP_REMEDY : REMEDY_SENTENCES[remedyOf(trouble)]}
        </p>
      ) : null}
      {isInTrouble(mail) && mail.movedTo ? <p className="mt-6">{movedOnSentence(mail.movedTo)}</p> : null}
    </>
  );
}

/** What a message would have said can be said by telephone; the page must not go on asking for it. */
function Told({ id }: { id: string }) {
  return (
    <div className="mt-6" id="told">
      <ActionForm
        action={toldAction.bind(null, id)}
        label="Told some other way"
        summary="Told some other way"
      >
        <TextArea
          name="note"
          label="How they were told"
          hint="For example: by telephone on Tuesday; they answer on the page."
          rows={2}
          maxLength={1000}
        />
        <SubmitButton
          kind="second"
          label="Keep that they know"
          consequence="Takes it off the job and off today’s page. It can still be sent again."
        />
      </ActionForm>
    </div>
  );
}

/** A message comes back to the mailbox of the workshop, where this program does not look. */
function CameBack({ id }: { id: string }) {
  return (
    <div className="mt-6">
      <ActionForm action={cameBackAction.bind(null, id)} label="It came back" summary="It came back">
        <TextArea
          name="note"
          label="What the other mail server said"
          hint="Copy the lines with a number such as 550 5.1.1: they tell what to do."
          rows={3}
          maxLength={1000}
        />
        <SubmitButton
          kind="second"
          label="Mark as come back"
          consequence="Shows on the job and on today’s page what to do about it."
        />
      </ActionForm>
    </div>
  );
}

function factsOf({ mail, drawn }: Preview, clock: { locale: string; zone: string }): Fact[] {
  const facts: Fact[] = [
    { term: 'State', text: <StateTag state={standingOf(mail)} /> },
    { term: 'To', text: mail.toAddress || 'address removed' },
  ];
  if (drawn) facts.push({ term: 'From', text: `${drawn.from.name} <${drawn.from.address}>` });
  if (drawn?.replyTo) facts.push({ term: 'Answers go to', text: drawn.replyTo });
  if (mail.jobNumber) {
    facts.push({
      term: 'Job',
      text: <NumberLink of="jobs" number={mail.jobNumber} />,
    });
  }
  if (mail.quoteNumber) {
    facts.push({
      term: 'Quote',
      text: <NumberLink of="quotes" number={mail.quoteNumber} />,
    });
  }
  facts.push({ term: 'Queued', text: formatInstant(mail.queuedAt, clock) });
  if (mail.sentAt) facts.push({ term: 'Sent', text: formatInstant(mail.sentAt, clock) });
  if (mail.bouncedAt) {
    facts.push(
      { term: 'Came back', text: formatInstant(mail.bouncedAt, clock) },
      { term: 'They said', text: mail.bounceNote },
    );
  }
  if (mail.toldAt) {
    facts.push(
      { term: 'Told some other way', text: formatInstant(mail.toldAt, clock) },
      { term: 'How', text: mail.toldNote },
    );
  }
  facts.push({ term: 'Tries', text: String(mail.attempts) });
  if (mail.lastError) facts.push({ term: 'Last reason', text: mail.lastError });
  facts.push(
    { term: 'Message-ID', text: <NumberText text={mail.messageId} /> },
    { term: 'Auto-Submitted', text: <NumberText text="auto-generated" /> },
  );
  return facts;
}
