import type { Metadata, Route } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { pageNumber } from '@/app/ui/page/page-number';
import { Pager } from '@/app/ui/page/pager';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { formatInstant } from '@/lib/calendar/format';
import { hasMailServer } from '@/lib/mail/mail-server';
import { countMail, type ListedMail, listMail, MAILS_PER_PAGE, type MailCounts } from '@/lib/mail/records';
import { mailStates, mayGoAgain } from '@/lib/mail/rules/standing';
import { templateWords } from '@/lib/mail/rules/words';
import { showNumber } from '@/lib/numbers/job-number';
import { pageOf } from '@/lib/numbers/page-of';
import { requireStaff } from '../../who';
import { sendAgainAction } from './actions';
import { type MailStanding, STATE_WORDS, StateTag, standingOf } from './state-tag';

export const metadata: Metadata = { title: 'Mail' };

type Search = { state?: string; page?: string };

export default async function MailPage({ searchParams }: { searchParams: Promise<Search> }) {
  await requireStaff('mail');
  const search = await searchParams;
  const state = SHOWN_STATES.find((known) => known === search.state) ?? null;
  const counts = await countMail();
  const all = mailStates.reduce((sum, known) => sum + counts[known], 0);
  const { page, pages } = pageOf(state ? counts[state] : all, {
    page: pageNumber(search.page),
    size: MAILS_PER_PAGE,
  });
  const [mails, workshop] = await Promise.all([listMail({ state, page }), readWorkshop()]);
  const clock = { locale: workshop.locale, zone: workshop.timeZone };
  return (
    <>
      <PageHead
        title="Mail"
        lead={
          state
            ? STATE_WORDS[state].meaning
            : 'Every message that left or waits. What needs a hand comes first.'
        }
      />
      {hasMailServer() ? null : (
        <div className="mb-6">
          <Notice kind="warn" heading="No mail server is set">
            <p>
              Messages are kept here and reach nobody. Set SMTP_URL and MAIL_FROM and start again, then send
              what is kept. Until then, open a message and pass its text on by hand.
            </p>
          </Notice>
        </div>
      )}
      <StateFilter chosen={state} counts={counts} all={all} />
      <Table
        caption={state ? `Messages: ${STATE_WORDS[state].label}` : 'Messages'}
        captionHidden
        rows={mails}
        rowKey={(mail) => mail.id}
        empty="No message stands here."
        columns={[
          {
            head: 'Message',
            kind: 'rowhead',
            cell: (mail) => (
              <TextLink href={`/workshop/mail/${mail.id}`}>{templateWords(mail.template)}</TextLink>
            ),
          },
          { head: 'State', cell: (mail) => <Standing mail={mail} /> },
          { head: 'To', cell: (mail) => mail.toAddress || 'address removed' },
          { head: 'Job or quote', cell: (mail) => <About mail={mail} /> },
          { head: 'Queued', cell: (mail) => formatInstant(mail.queuedAt, clock) },
          { head: 'Send again', cell: (mail) => <SendAgain mail={mail} /> },
        ]}
      />
      <Pager
        page={page}
        pages={pages}
        href={(other) =>
          `/workshop/mail?${new URLSearchParams({ ...(state && { state }), page: String(other) })}`
        }
      />
      <p className="mt-12">
        <TextLink href="/workshop/mail/samples">Read a sample of every message</TextLink>
      </p>
    </>
  );
}

const SHOWN_STATES: readonly MailStanding[] = ['failed', 'bounced', 'kept', 'queued', 'sending', 'sent'];

function StateFilter(props: { chosen: MailStanding | null; counts: MailCounts; all: number }) {
  return (
    <nav aria-label="Messages by state" className="mb-6">
      <ul className="flex flex-wrap gap-x-6">
        <li>
          <FilterLink href="/workshop/mail" label="all" count={props.all} isChosen={props.chosen === null} />
        </li>
        {SHOWN_STATES.map((state) => (
          <li key={state}>
            <FilterLink
              href={`/workshop/mail?state=${state}`}
              label={STATE_WORDS[state].label}
              count={props.counts[state]}
              isChosen={props.chosen === state}
            />
          </li>
        ))}
      </ul>
    </nav>
  );
}

function FilterLink(props: { href: Route; label: string; count: number; isChosen: boolean }) {
  const words = `${props.label} (${props.count})`;
  return (
    <span className="inline-block py-2.5">
      {props.isChosen ? (
        <strong aria-current="page">{words}</strong>
      ) : (
        <TextLink href={props.href}>{words}</TextLink>
      )}
    </span>
  );
}

function Standing({ mail }: { mail: ListedMail }) {
  return (
    <>
      <StateTag state={standingOf(mail)} />
      {mail.lastError ? <span className="block">{mail.lastError}</span> : null}
      {mail.bouncedAt ? <span className="block">{mail.bounceNote}</span> : null}
      {mail.toldAt ? <span className="block">{`Told some other way: ${mail.toldNote}`}</span> : null}
    </>
  );
}

function About({ mail }: { mail: ListedMail }) {
  const number = mail.jobNumber ?? mail.quoteNumber;
  if (!number) return 'none';
  return (
    <TextLink href={`/workshop/${mail.jobNumber ? 'jobs' : 'quotes'}/${number}`}>
      <NumberText text={showNumber(number)} />
    </TextLink>
  );
}

function SendAgain({ mail }: { mail: ListedMail }) {
  // What has not been tried yet leaves by itself within seconds.
  const isUntried = mail.state === 'queued' && mail.lastError === null;
  if (isUntried || !mayGoAgain(mail) || mail.toAddress === '') return 'not needed';
  if (!hasMailServer()) return 'needs a mail server';
  return (
    <ActionForm action={sendAgainAction.bind(null, mail.id)} label={`Send again to ${mail.toAddress}`}>
      <SubmitButton kind="second" label="Send again" busy="Queueing…" />
    </ActionForm>
  );
}
