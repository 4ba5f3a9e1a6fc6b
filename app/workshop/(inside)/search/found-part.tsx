import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { QuoteStateTag } from '@/app/ui/words/quote-state-tag';
import { StageTag } from '@/app/ui/words/stage-tag';
import { type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import type { FoundPlaceKey, FoundRow } from '@/lib/jobs/find-everywhere';
import { isStage } from '@/lib/jobs/rules/stages';
import { showNumber } from '@/lib/numbers/job-number';
import { readRequestState } from '@/lib/quotes/rules/request-states';
import { pathOf } from './found-path';

type Words = {
  many: string;
  one: string;
  what: string;
  whose: string;
  at: string;
  list: '/workshop/jobs' | '/workshop/quotes' | '/workshop/money' | null;
};

/** `list` is the page of all of them; lots have no list of their own. */
const WORDS: Record<FoundPlaceKey, Words> = {
  job: {
    many: 'Jobs',
    one: 'Job',
    what: 'Unit and repair',
    whose: 'Customer',
    at: 'Booked',
    list: '/workshop/jobs',
  },
  quote: {
    many: 'Prices asked for',
    one: 'Quote',
    what: 'Device',
    whose: 'Customer',
    at: 'Asked',
    list: '/workshop/quotes',
  },
  lot: { many: 'Lots', one: 'Lot', what: 'Part', whose: 'Supplier', at: 'Received', list: null },
  invoice: {
    many: 'Invoices',
    one: 'Invoice',
    what: 'Job',
    whose: 'Customer',
    at: 'Issued',
    list: '/workshop/money',
  },
};

type Props = {
  place: FoundPlaceKey;
  rows: readonly FoundRow[];
  q: string;
  clock: { locale: string; timeZone: string };
};

/** The newest few of one kind, and the way to all of them; nothing where none was found. */
export function FoundPart({ place, rows, q, clock }: Props) {
  const [first] = rows;
  if (!first) return null;
  const words = WORDS[place];
  const isMore = first.total > rows.length;
  return (
    <section aria-labelledby={`found-${place}`}>
      <h2 id={`found-${place}`}>{words.many}</h2>
      <Table
        caption={words.many}
        captionHidden
        rows={rows}
        rowKey={(row) => row.key}
        columns={[
          {
            head: words.one,
            kind: 'rowhead',
            cell: (row) => (
              <TextLink href={pathOf(place, row.key)}>
                <NumberText text={isNumbered(place) ? showNumber(row.name) : row.name} />
              </TextLink>
            ),
          },
          {
            head: words.what,
            cell: (row) => (place === 'invoice' ? <NumberText text={showNumber(row.what)} /> : row.what),
          },
          { head: words.whose, cell: (row) => row.whose },
          ...(isNumbered(place) ? [{ head: 'Stage', cell: (row: FoundRow) => <State row={row} /> }] : []),
          { head: words.at, cell: (row) => formatDay(dayOf(row, clock.timeZone), clock.locale, 'short') },
        ]}
      />
      {isMore && words.list !== null ? (
        <p>
          <TextLink href={`${words.list}?${new URLSearchParams({ q })}`}>
            {place === 'job' ? `All ${first.total} in the list` : 'All in the list'}
          </TextLink>
        </p>
      ) : null}
      {isMore && words.list === null ? <p>{`${first.total} fit; type more of the code.`}</p> : null}
    </section>
  );
}

function dayOf({ place, at }: FoundRow, timeZone: string): Day {
  return place === 'lot' ? dayFromDate(at) : dayInZone(at, timeZone);
}

function isNumbered(place: FoundPlaceKey): boolean {
  return place === 'job' || place === 'quote';
}

function State({ row: { place, state } }: { row: FoundRow }) {
  if (place === 'job' && isStage(state)) return <StageTag stage={state} />;
  return place === 'quote' ? <QuoteStateTag state={readRequestState(state)} /> : null;
}
