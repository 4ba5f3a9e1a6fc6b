import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { Facts } from '@/app/ui/docket/facts';
import { EmptyState } from '@/app/ui/page/empty-state';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { QuoteStateTag } from '@/app/ui/words/quote-state-tag';
import { StageTag } from '@/app/ui/words/stage-tag';
import { NumberLink } from '@/app/workshop/number-link';
import { formatDay, formatInstant } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { type PersonView, readPerson } from '@/lib/keeping/person-view';
import { noteSeen } from '@/lib/keeping/seen';
import { showNumber } from '@/lib/numbers/job-number';
import { may } from '@/lib/people/rules/roles';
import type { WorkshopCard } from '@/lib/workshop/card';
import { requireStaff } from '../../../who';
import { numberedTitle } from '../../numbered-title';
import { DataPart } from './data-part';

export const generateMetadata = numberedTitle('Customer');

type Props = { params: Promise<{ number: string }>; searchParams: Promise<{ removed?: string }> };

export default async function CustomerPage({ params, searchParams }: Props) {
  const who = await requireStaff('take-in');
  const { number } = await params;
  const { removed } = await searchParams;
  const person = await readPerson(number, now());
  if (!person) nothingHere();
  if (person.email !== '') {
    await noteSeen({ userId: who.id, what: 'opened', email: person.email, now: now() });
  }
  const workshop = await readWorkshop();
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/customers">Customers</TextLink>}
        title={person.name}
        lead={
          person.email === ''
            ? 'Name, address, words and photos were removed. What the books and the proof of the repair need is left.'
            : `Everything written under ${person.email}.`
        }
      />
      {removed !== undefined && person.email === '' ? (
        <Notice kind="good" role="status" heading="Removed">
          <p>The data of this person was removed. It cannot be brought back.</p>
        </Notice>
      ) : null}
      {person.contacts.map((contact, index) => (
        <div key={contact.since.toISOString()} className="mb-6">
          <Facts
            items={[
              { term: 'Name', text: contact.name },
              { term: 'E-mail', text: <a href={`mailto:${contact.email}`}>{contact.email}</a> },
              { term: 'Telephone', text: contact.phone },
              { term: 'Address', text: contact.address },
              {
                term: index === 0 ? 'As of' : 'Written down',
                text: formatInstant(contact.since, { locale: workshop.locale, zone: workshop.timeZone }),
              },
            ]}
          />
        </div>
      ))}
      <JobsPart person={person} workshop={workshop} />
      <QuotesPart person={person} workshop={workshop} />
      {may(who.role, 'personal-data') ? (
        <>
          <DataPart number={number} person={person} workshop={workshop} />
          <SeenPart person={person} workshop={workshop} />
        </>
      ) : null}
    </>
  );
}

type PartProps = { person: PersonView; workshop: WorkshopCard };

function JobsPart({ person, workshop }: PartProps) {
  return (
    <section aria-labelledby="jobs">
      <h2 id="jobs">Jobs</h2>
      <Table
        caption="Jobs, newest first"
        captionHidden
        rows={person.jobs}
        rowKey={(job) => job.number}
        empty="No job was booked."
        columns={[
          { head: 'Job', kind: 'rowhead', cell: (job) => <NumberLink of="jobs" number={job.number} /> },
          {
            head: 'Unit and repair',
            cell: (job) => `${job.unit}: ${job.repair}${job.kind === 'claim' ? ' (claim)' : ''}`,
          },
          { head: 'Stage', cell: (job) => <StageTag stage={job.stage} /> },
          { head: 'Booked', cell: (job) => formatDay(job.bookedOn, workshop.locale, 'short') },
        ]}
      />
    </section>
  );
}

function QuotesPart({ person, workshop }: PartProps) {
  if (person.quotes.length === 0) return null;
  return (
    <section aria-labelledby="quotes">
      <h2 id="quotes">Prices asked for</h2>
      <Table
        caption="Prices asked for, newest first"
        captionHidden
        rows={person.quotes}
        rowKey={(quote) => quote.number}
        columns={[
          {
            head: 'Quote',
            kind: 'rowhead',
            cell: (quote) => <NumberLink of="quotes" number={quote.number} />,
          },
          { head: 'Device', cell: (quote) => quote.device },
          { head: 'State', cell: (quote) => <QuoteStateTag state={quote.state} /> },
          { head: 'Asked', cell: (quote) => formatDay(quote.askedOn, workshop.locale, 'short') },
        ]}
      />
    </section>
  );
}

const SEEN_WORDS: Record<string, string> = {
  opened: 'opened',
  exported: 'handed out a copy of the data on',
  erased: 'removed the data on',
  corrected: 'corrected the contact of',
};

function SeenPart({ person, workshop }: PartProps) {
  const clock = { locale: workshop.locale, zone: workshop.timeZone };
  return (
    <section aria-labelledby="seen">
      <h2 id="seen">Who saw it</h2>
      {person.seen.length === 0 ? (
        <EmptyState>Nobody has opened it since the log was kept.</EmptyState>
      ) : (
        <>
          <p className="text-small text-soft">
            One line for each person, job and hour. The log itself holds no name or address of the customer.
          </p>
          <Table
            caption="Who saw the data, newest first"
            captionHidden
            rows={person.seen}
            rowKey={(row) => row.id}
            columns={[
              { head: 'Who', kind: 'rowhead', cell: (row) => row.who },
              {
                head: 'What',
                cell: (row) =>
                  row.number ? (
                    <>
                      {`${SEEN_WORDS[row.what] ?? row.what} `}
                      <NumberText text={showNumber(row.number)} />
                    </>
                  ) : row.what === 'opened' ? (
                    'opened this page'
                  ) : (
                    (SEEN_WORDS[row.what] ?? row.what)
                  ),
              },
              { head: 'When', cell: (row) => formatInstant(row.at, clock) },
            ]}
          />
        </>
      )}
    </section>
  );
}
