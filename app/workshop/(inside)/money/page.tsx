import type { Metadata, Route } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { PageHead } from '@/app/ui/page/page-head';
import { pageNumber } from '@/app/ui/page/page-number';
import { Pager } from '@/app/ui/page/pager';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { NumberLink } from '@/app/workshop/number-link';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { listEnteredSince } from '@/lib/invoices/list-entered-since';
import { INVOICES_PER_PAGE, listInvoices } from '@/lib/invoices/list-invoices';
import { listToGiveBack } from '@/lib/invoices/list-to-give-back';
import { INVOICE_STATES, STATE_WORDS } from '@/lib/invoices/rules/state';
import { listSinceFiles } from '@/lib/invoices/since-files';
import { formatMoney } from '@/lib/money/amount';
import { requireStaff } from '../../who';
import { EnteredSincePart } from './entered-since-part';
import { GiveBackPart } from './give-back-part';
import { InvoiceSearch } from './invoice-search';
import { InvoiceTag } from './invoice-tag';
import { JournalForm } from './journal-form';

export const metadata: Metadata = { title: 'Money' };

/** A year's worth, where there is one in most months. */
const SINCE_FILES = 12;

type Search = { q?: string; state?: string; page?: string };

export default async function MoneyPage({ searchParams }: { searchParams: Promise<Search> }) {
  await requireStaff('money');
  const search = await searchParams;
  const text = typeof search.q === 'string' ? search.q : '';
  const state = INVOICE_STATES.find((known) => known === search.state) ?? null;
  const workshop = await readWorkshop();
  const { locale } = workshop;
  const [{ rows, total, page }, toGiveBack, enteredSince, sinceFiles] = await Promise.all([
    listInvoices({ text, state, page: pageNumber(search.page) }),
    listToGiveBack(workshop.timeZone),
    listEnteredSince(),
    listSinceFiles(SINCE_FILES),
  ]);
  const today = dayInZone(now(), workshop.timeZone);
  const money = (minor: number, currency: string) => formatMoney(minor, currency, locale);
  const address = (o: { state?: string | null; page?: number }): Route => {
    const chosen = o.state === undefined ? state : o.state;
    return `/workshop/money?${new URLSearchParams({
      ...(text !== '' && { q: text }),
      ...(chosen && { state: chosen }),
      ...(o.page !== undefined && { page: String(o.page) }),
    })}`;
  };
  return (
    <>
      <PageHead
        title="Money"
        lead="Invoices and credit notes, newest first. An invoice is issued automatically when a unit is ready; before that, from its job sheet."
      />
      <EnteredSincePart rows={enteredSince} workshop={workshop} />
      <GiveBackPart rows={toGiveBack} today={today} locale={locale} />
      <InvoiceSearch text={text} state={state} />
      <nav aria-label="Invoices by state" className="mt-3 mb-6">
        <ul className="flex flex-wrap gap-x-6">
          {[null, ...INVOICE_STATES].map((each) => (
            <li key={each ?? 'all'} className="py-2.5">
              <StateLink
                href={address({ state: each })}
                label={each === null ? 'all' : STATE_WORDS[each].label}
                isChosen={each === state}
              />
            </li>
          ))}
        </ul>
      </nav>
      <Table
        caption={state ? `Invoices: ${STATE_WORDS[state].meaning}` : 'Invoices and credit notes'}
        rows={rows}
        rowKey={(row) => row.number}
        empty={text === '' ? 'No invoice stands here.' : 'Nothing with this number or name.'}
        columns={[
          {
            head: 'Number',
            kind: 'rowhead',
            cell: (row) => (
              <TextLink href={`/workshop/money/invoices/${row.number}`}>
                <NumberText text={row.number} />
              </TextLink>
            ),
          },
          {
            head: 'State',
            cell: (row) => (
              <>
                <InvoiceTag state={row.state} dueOn={row.dueOn} today={today} />
                {row.state === 'open'
                  ? ` ${money(row.owed, row.currency)} by ${formatDay(row.dueOn, locale, 'short')}`
                  : null}
              </>
            ),
          },
          { head: 'Issued', cell: (row) => formatDay(row.issuedOn, locale, 'short') },
          { head: 'Customer', cell: (row) => row.customer },
          { head: 'Job', cell: (row) => <NumberLink of="jobs" number={row.jobNumber} part="money" /> },
          {
            head: 'Amount',
            kind: 'number',
            cell: (row) => money(row.kind === 'invoice' ? row.payable : -row.payable, row.currency),
          },
        ]}
      />
      <Pager
        page={page}
        pages={Math.ceil(total / INVOICES_PER_PAGE)}
        href={(other) => address({ page: other })}
      />
      <JournalForm month={today.slice(0, 7)} files={sinceFiles} workshop={workshop} />
    </>
  );
}

function StateLink(props: { href: Route; label: string; isChosen: boolean }) {
  if (props.isChosen) return <strong aria-current="page">{props.label}</strong>;
  return <TextLink href={props.href}>{props.label}</TextLink>;
}
