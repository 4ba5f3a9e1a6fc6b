import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { QuoteStateTag } from '@/app/ui/words/quote-state-tag';
import { NumberLink } from '@/app/workshop/number-link';
import { formatDay } from '@/lib/calendar/format';
import { formatMoney } from '@/lib/money/amount';
import { type ListedQuote, listQuotes, QUOTES_PER_PAGE } from '@/lib/quotes/list-quotes';
import { REQUEST_GROUPS } from '@/lib/quotes/rules/request-groups';
import { type ListSearch, listedAt } from '../../searched-list/list-address';
import { emptySentence, leadOf } from '../../searched-list/list-words';
import { PartLinks } from '../../searched-list/part-links';
import { SearchedList } from '../../searched-list/searched-list';
import { requireStaff } from '../../who';

export const metadata: Metadata = { title: 'Quotes' };

/** Everything a price was asked for, what waits on us first. */
export default async function QuotesPage({ searchParams }: { searchParams: ListSearch }) {
  await requireStaff('take-in');
  const asked = (await searchParams)['group'];
  const group = REQUEST_GROUPS.find(({ key }) => key === asked)?.key ?? null;
  const sought = { ...(await listedAt('/workshop/quotes', searchParams)), part: ['group', group] as const };
  const { q } = sought;
  const [{ quotes, total, page, counts }, { locale }] = await Promise.all([
    listQuotes({ group, q, page: sought.page }),
    readWorkshop(),
  ]);
  const listed = { ...sought, page };
  return (
    <SearchedList
      title="Quotes"
      lead={leadOf({
        listed,
        found: total === 1 ? '1 quote' : `${total} quotes`,
        everything: ' asked for',
        total,
        perPage: QUOTES_PER_PAGE,
      })}
      listed={listed}
      search={{ id: 'find-quote', label: 'Number, name, telephone, device, serial or e-mail' }}
      total={total}
      perPage={QUOTES_PER_PAGE}
      filter={
        <PartLinks
          label="Quotes by who they wait on"
          listed={listed}
          name="group"
          chosen={group}
          all={[...counts.values()].reduce((sum, count) => sum + count, 0)}
          parts={REQUEST_GROUPS.map(({ key, label }) => ({
            value: key,
            words: label,
            count: counts.get(key) ?? 0,
          }))}
        />
      }
      table={{
        caption: 'Quotes that were asked for: those that wait on us first, the oldest first',
        rows: quotes,
        rowKey: (quote) => quote.number,
        empty: emptySentence(q, EMPTY),
        columns: [
          {
            head: 'Quote',
            kind: 'rowhead',
            cell: (quote) => <NumberLink of="quotes" number={quote.number} />,
          },
          { head: 'Device and problem', cell: (quote) => <Device quote={quote} /> },
          { head: 'Customer', cell: (quote) => quote.customer },
          { head: 'State', cell: (quote) => <QuoteStateTag state={quote.state} /> },
          { head: 'Price', cell: (quote) => priceText(quote, locale) },
          { head: 'Asked', kind: 'short', cell: (quote) => formatDay(quote.askedOn, locale, 'short') },
        ],
      }}
    />
  );
}

const EMPTY = {
  nothing: 'No quote stands here.',
  number: 'The number is spelt right, but no request for a price carries it.',
  text: 'No quote fits. A part of the device, the name or the e-mail address is enough.',
};

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
