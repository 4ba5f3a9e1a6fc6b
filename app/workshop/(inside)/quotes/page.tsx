import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { pageNumber } from '@/app/ui/page/page-number';
import { Pager } from '@/app/ui/page/pager';
import { SearchBox } from '@/app/ui/page/search-box';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { formatDay } from '@/lib/calendar/format';
import { soughtFrom } from '@/lib/jobs/rules/sought';
import { formatMoney } from '@/lib/money/amount';
import { explainReading, showNumber } from '@/lib/numbers/job-number';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { type ListedQuote, listQuotes, QUOTES_PER_PAGE } from '@/lib/quotes/list-quotes';
import { REQUEST_GROUPS, type RequestGroup } from '@/lib/quotes/rules/request-groups';
import { readWorkshop } from '@/lib/workshop/records';
import { requireStaff } from '../../who';
import { QuoteStateTag } from './state-tag';

export const metadata: Metadata = { title: 'Quotes' };

type Search = { group?: string | string[]; q?: string | string[]; page?: string | string[] };

/** Everything a price was asked for, what waits on us first. */
export default async function QuotesPage({ searchParams }: { searchParams: Promise<Search> }) {
  await requireStaff(rolesThatMay('take-in'));
  const search = await searchParams;
  const q = String(search.q ?? '').trim();
  const group = REQUEST_GROUPS.find(({ key }) => key === search.group)?.key ?? null;
  const page = pageNumber(search.page);
  const [{ quotes, total, counts }, { locale }] = await Promise.all([
    listQuotes({ group, q, page }),
    readWorkshop(),
  ]);
  return (
    <>
      <PageHead title="Quotes" lead={leadOf({ q, total, page, shown: quotes.length })} />
      <div className="mb-6 max-w-[42rem]">
        <SearchBox
          action="/workshop/quotes"
          label="Number, name, device, serial or e-mail"
          defaultValue={q}
          id="find-quote"
          button="Search"
        />
      </div>
      <GroupFilter chosen={group} q={q} counts={counts} />
      <Table
        caption="Quotes that were asked for: those that wait on us first, the oldest first"
        captionHidden
        rows={quotes}
        rowKey={(quote) => quote.number}
        empty={emptySentence(q)}
        columns={[
          {
            key: 'number',
            head: 'Quote',
            kind: 'rowhead',
            cell: (quote) => (
              <TextLink href={`/workshop/quotes/${quote.number}`}>
                <NumberText text={showNumber(quote.number)} />
              </TextLink>
            ),
          },
          { key: 'device', head: 'Device and problem', cell: (quote) => <Device quote={quote} /> },
          { key: 'customer', head: 'Customer', cell: (quote) => quote.customer },
          { key: 'state', head: 'State', cell: (quote) => <QuoteStateTag state={quote.state} /> },
          { key: 'price', head: 'Price', cell: (quote) => priceText(quote, locale) },
          { key: 'asked', head: 'Asked', cell: (quote) => formatDay(quote.askedOn, locale, 'short') },
        ]}
      />
      <Pager
        page={page}
        pages={Math.ceil(total / QUOTES_PER_PAGE)}
        href={(other) => addressOf({ group, q, page: other })}
      />
    </>
  );
}

/** Letters of a problem that a row shows; the rest is on the quote's own page. */
const MOST_LETTERS = 90;

function Device({ quote }: { quote: ListedQuote }) {
  const { problem, photos } = quote;
  const short = problem.length > MOST_LETTERS ? `${problem.slice(0, MOST_LETTERS).trimEnd()}…` : problem;
  return (
    <>
      {quote.device}
      <span className="block text-small text-soft">
        {short}
        {photos === 0 ? '' : photos === 1 ? ' · 1 photo' : ` · ${photos} photos`}
      </span>
    </>
  );
}

function priceText(quote: ListedQuote, locale: string): string {
  if (quote.gross === null) return 'none yet';
  const money = formatMoney(quote.gross, quote.currency, locale);
  if (quote.state !== 'quoted' || !quote.heldUntil) return money;
  return `${money}, held until ${formatDay(quote.heldUntil, locale, 'short')}`;
}

function leadOf(o: { q: string; total: number; page: number; shown: number }): string {
  const found = o.total === 1 ? '1 quote' : `${o.total} quotes`;
  const which = o.q === '' ? ' asked for' : ` for “${o.q}”`;
  if (o.shown === o.total || o.shown === 0) return `${found}${which}.`;
  const first = (o.page - 1) * QUOTES_PER_PAGE + 1;
  return `${found}${which}, here ${first} to ${first + o.shown - 1}.`;
}

function emptySentence(q: string): string {
  const sought = soughtFrom(q);
  if (sought.kind === 'nothing') return 'No quote stands here.';
  if (sought.kind === 'number') return 'The number is spelt right, but no request for a price carries it.';
  if (sought.wrong === 'check' || sought.wrong === 'character') return explainReading(sought.wrong);
  return 'No quote fits. A part of the device, the name or the e-mail address is enough.';
}

function addressOf(o: { group: RequestGroup | null; q: string; page?: number }): string {
  const search = new URLSearchParams({
    ...(o.group === null ? {} : { group: o.group }),
    ...(o.q === '' ? {} : { q: o.q }),
    ...(o.page === undefined || o.page === 1 ? {} : { page: String(o.page) }),
  });
  return search.size === 0 ? '/workshop/quotes' : `/workshop/quotes?${search}`;
}

type FilterProps = {
  chosen: RequestGroup | null;
  q: string;
  counts: ReadonlyMap<RequestGroup, number>;
};

function GroupFilter({ chosen, q, counts }: FilterProps) {
  const all = [...counts.values()].reduce((sum, count) => sum + count, 0);
  const links = [
    { key: 'all', group: null, words: `All (${all})` },
    ...REQUEST_GROUPS.map(({ key, label }) => ({
      key,
      group: key,
      words: `${label} (${counts.get(key) ?? 0})`,
    })),
  ];
  return (
    <nav aria-label="Quotes by who they wait on" className="mb-6">
      <ul className="flex flex-wrap gap-x-6">
        {links.map(({ key, group, words }) => (
          <li key={key} className="py-2.5">
            {group === chosen ? (
              <strong aria-current="page">{words}</strong>
            ) : (
              <TextLink href={addressOf({ group, q })}>{words}</TextLink>
            )}
          </li>
        ))}
      </ul>
    </nav>
  );
}
