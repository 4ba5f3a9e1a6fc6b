import type { Metadata, Route } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { Slip, SlipList } from '@/app/ui/docket/slip';
import { LinkButton } from '@/app/ui/page/button';
import { EmptyState } from '@/app/ui/page/empty-state';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { viewBackups } from '@/lib/backup/records';
import { formatDay, formatInstant } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { listToGiveBackToday } from '@/lib/invoices/list-to-give-back';
import { beginWith, firstOf } from '@/lib/jobs/rules/today';
import { readToday, type Today } from '@/lib/jobs/today';
import { hasMailServer } from '@/lib/mail/mail-server';
import { showNumber } from '@/lib/numbers/job-number';
import { may, type Role } from '@/lib/people/rules/roles';
import { isUnnamed } from '@/lib/people/rules/unnamed';
import { coverClock } from '@/lib/returns/cover-clock';
import { flaggedLots } from '@/lib/returns/flagged-lots';
import type { WorkshopCard } from '@/lib/workshop/card';
import { readFirstSteps } from '@/lib/workshop/first-steps';
import type { FirstStep } from '@/lib/workshop/rules/first-steps';
import { requireStaff } from '../who';
import { AnswerTag } from './answer-tag';
import { ParcelsNotCome, PostedTag, waitFacts } from './awaited-parcels';
import { LackingBackup } from './lacking-backup';
import { MissedBackup } from './today-backup';
import { FirstStepsPart } from './today-first';
import { LoadPart } from './today-load';
import { LotsToday } from './today-lots';
import { MailToday } from './today-mail';
import { MoneyToday } from './today-money';
import { QuotesOnCustomer, QuotesOnUs, quoteAction } from './today-quotes';
import { TodaySection } from './today-rows';
import { ParcelsSought } from './today-sought';
import { claimAtDesk, stepOf } from './today-steps';

export const metadata: Metadata = { title: 'Today' };

export default async function TodayPage() {
  const who = await requireStaff();
  const at = now();
  const workshop = await readWorkshop();
  const [today, toGiveBack, backups, lots] = await Promise.all([
    readToday(at, workshop),
    may(who.role, 'money') ? listToGiveBackToday(workshop.timeZone, at) : null,
    may(who.role, 'settings') ? viewBackups(at, workshop.timeZone) : null,
    may(who.role, 'returns') ? flaggedLots(coverClock(workshop, at), at) : [],
  ]);
  const { lists, quotes, unanswered, expected, notCome } = today;
  const hasOpenJobs =
    expected.length + notCome.length > 0 || Object.values(lists).some((list) => list.length > 0);
  const toDo = may(who.role, 'settings')
    ? await readFirstSteps(workshop, {
        hasOpenJobs,
        hasMailServer: hasMailServer(),
        unnamedId: isUnnamed(who) ? who.id : null,
      })
    : null;
  const format = { workshop, today: today.today, role: who.role };
  const section = { format };
  return (
    <>
      <PageHead
        title="Today"
        lead={formatDay(today.today, workshop.locale, 'weekday')}
        next={<First today={today} role={who.role} step={toDo?.steps[0]} />}
      />
      {toDo ? <FirstStepsPart {...toDo} /> : null}
      <Counts today={today} toGiveBack={toGiveBack?.length ?? null} />
      <MailToday mail={today.mail} role={who.role} />
      {backups?.nightly?.standing === 'missed' ? (
        <MissedBackup last={backups.backups[0]} workshop={workshop} />
      ) : null}
      {backups ? <LackingBackup backups={backups} /> : null}
      <TodaySection {...section} id="late" title="Late against the promise" rows={lists.late} empty={null} />
      <TodaySection
        {...section}
        id="claims"
        title="Claims to rule on"
        rows={lists.claims}
        empty="No claim that is here waits for a ruling or a second look."
      />
      <TodaySection
        {...section}
        id="on-us"
        title="Waits on us"
        rows={lists.onUs}
        empty="Nothing else waits on us."
      />
      <MoneyToday rows={toGiveBack ?? []} today={today.today} locale={workshop.locale} />
      <LotsToday lots={lots} locale={workshop.locale} />
      <QuotesOnUs quotes={quotes} workshop={workshop} role={who.role} />
      {unanswered.length > 0 ? <UnansweredPart unanswered={unanswered} workshop={workshop} /> : null}
      <TodaySection
        {...section}
        id="on-customer"
        title="Waits on the customer"
        rows={lists.onCustomer}
        empty="No customer has to answer or to pay."
      />
      <QuotesOnCustomer quotes={quotes} workshop={workshop} role={who.role} />
      <ExpectedPart expected={expected} workshop={workshop} />
      <ParcelsSought parcels={today.sought} locale={workshop.locale} />
      <ParcelsNotCome parcels={notCome} locale={workshop.locale} />
      <LoadPart load={today.load} workshop={workshop} />
    </>
  );
}

/** The one thing to begin with, as a link: a job, the price that was asked for first, or what is not set up yet. */
function First({ today, role, step: open }: { today: Today; role: Role; step: FirstStep | undefined }) {
  const row = firstOf(today.lists, role);
  const step = row ? stepOf(row, role) : null;
  const [asked] = today.quotes.onUs;
  const [message] = today.unanswered;
  const begin = beginWith({
    job: row && step ? row.daysLate : null,
    quote: asked?.answer?.daysOver ?? null,
    message: message?.answer.daysOver ?? null,
  });
  if (begin === 'job' && row && step)
    return <Step step={step} unit={row.job.unit} number={claimAtDesk(row) ?? row.job.number} />;
  if (begin === 'quote' && asked)
    return <Step step={quoteAction(asked, role)} unit={asked.quote.device} number={asked.quote.number} />;
  if (begin === 'message')
    return (
      <>
        <TextLink href="#unanswered">answer what customers wrote</TextLink>.
      </>
    );
  if (!open) {
    const { late, claims, onUs } = today.lists;
    const isAnyHere = [late, claims, onUs].some((rows) => rows.length > 0);
    return `nothing waits on ${isAnyHere ? 'you' : 'us'}. Parcels that come are taken in under Arrivals.`;
  }
  return (
    <>
      {'fill in what is still missing, beginning with '}
      <TextLink href={open.href}>{open.label.toLowerCase()}</TextLink>.
    </>
  );
}

function Step(props: { step: { label: string; href: Route }; unit: string; number: string }) {
  return (
    <>
      <TextLink href={props.step.href}>{props.step.label}</TextLink>
      {`: ${props.unit}, `}
      <NumberText text={showNumber(props.number)} />
      {'.'}
    </>
  );
}

/** `toGiveBack` is null for those who have no hand in money. */
function Counts({ today, toGiveBack }: { today: Today; toGiveBack: number | null }) {
  const { lists, quotes, unanswered, expected, notCome, sought, mail } = today;
  const entries = [
    { href: '#late', label: 'late', count: lists.late.length },
    { href: '#claims', label: 'claims to rule on', count: lists.claims.length },
    { href: '#on-us', label: 'wait on us', count: lists.onUs.length },
    { href: '#quotes', label: 'prices asked for', count: quotes.onUs.length },
    { href: '#unanswered', label: 'messages to answer', count: unanswered.length },
    ...(toGiveBack === null ? [] : [{ href: '#give-back', label: 'sums to give back', count: toGiveBack }]),
    { href: '#on-customer', label: 'wait on customers', count: lists.onCustomer.length },
    { href: '#expected', label: 'parcels expected', count: expected.length },
    ...(notCome.length === 0
      ? []
      : [{ href: '#not-come', label: 'parcels that did not come', count: notCome.length }]),
    ...(sought.length === 0 ? [] : [{ href: '#sought', label: 'parcels looked for', count: sought.length }]),
    { href: '#mail', label: 'mails not arrived', count: mail.failed + mail.bounced },
  ];
  return (
    <ul
      aria-label="How many"
      className={`grid grid-cols-2 gap-x-6 border-y border-edge ${toGiveBack === null ? 'sm:grid-cols-4 lg:grid-cols-8' : 'sm:grid-cols-3 lg:grid-cols-9'}`}
    >
      {entries.map(({ href, label, count }) => (
        <li key={href} className="py-2">
          <span className={`block text-head font-bold ${count === 0 ? 'text-soft' : ''}`}>{count}</span>
          {count === 0 ? (
            <span className="text-small text-soft">{label}</span>
          ) : (
            <a href={href} className="text-small">
              {label}
            </a>
          )}
        </li>
      ))}
    </ul>
  );
}

function UnansweredPart(props: { unanswered: Today['unanswered']; workshop: WorkshopCard }) {
  const { locale, timeZone } = props.workshop;
  return (
    <section aria-labelledby="unanswered">
      <h2 id="unanswered">Messages to answer</h2>
      <SlipList label="Messages to answer">
        {props.unanswered.map((each) => (
          <Slip
            key={each.number}
            href={`/workshop/${each.of}s/${each.number}`}
            kind={each.of === 'job' ? 'Job' : 'Quote'}
            number={showNumber(each.number)}
            title={each.unit}
            facts={[
              <AnswerTag key="answer" due={each.answer} locale={locale} />,
              each.customer,
              `written ${formatInstant(each.at, { locale, zone: timeZone })}`,
            ]}
            tag={
              <LinkButton href={`/workshop/${each.of}s/${each.number}#messages`} kind="second">
                Answer
              </LinkButton>
            }
          />
        ))}
      </SlipList>
    </section>
  );
}

/** Parcels listed here; the others are under Arrivals. */
const MOST_EXPECTED = 5;

function ExpectedPart(props: { expected: Today['expected']; workshop: WorkshopCard }) {
  const { expected, workshop } = props;
  const posted = expected.filter((job) => job.reference !== '').length;
  return (
    <section aria-labelledby="expected">
      <h2 id="expected">Parcels expected</h2>
      {expected.length === 0 ? (
        <EmptyState>No parcel is expected.</EmptyState>
      ) : (
        <>
          <p>{`${expected.length} booked, ${posted} of them known to be posted.`}</p>
          <SlipList label="Parcels expected">
            {expected.slice(0, MOST_EXPECTED).map((job) => (
              <Slip
                key={job.number}
                href={`/workshop/arrivals/${job.number}`}
                kind={job.kind === 'claim' ? 'Claim job' : 'Job'}
                number={showNumber(job.number)}
                title={`${job.unit}: ${job.repair}`}
                facts={[
                  <PostedTag key="posted" job={job} />,
                  job.customer,
                  ...waitFacts(job, workshop.locale),
                ]}
                tag={
                  <LinkButton href={`/workshop/arrivals/${job.number}`} kind="second">
                    Take in
                  </LinkButton>
                }
              />
            ))}
          </SlipList>
        </>
      )}
      <p>
        <TextLink href="/workshop/arrivals">Arrivals: scan a parcel, all that are expected</TextLink>
      </p>
    </section>
  );
}
