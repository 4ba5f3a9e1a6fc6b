import type { Route } from 'next';
import { Slip, SlipList } from '@/app/ui/docket/slip';
import { LinkButton } from '@/app/ui/page/button';
import { EmptyState } from '@/app/ui/page/empty-state';
import { routeTo } from '@/app/ui/page/route-to';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { formatDay } from '@/lib/calendar/format';
import type { QuoteRow, QuoteStep } from '@/lib/jobs/rules/today-quotes';
import type { Today, TodayAsked } from '@/lib/jobs/today';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { may, type Role } from '@/lib/people/rules/roles';
import type { WorkshopCard } from '@/lib/workshop/card';
import { AnswerTag } from './answer-tag';

type Row = QuoteRow<TodayAsked>;
type Props = { quotes: Today['quotes']; workshop: WorkshopCard; role: Role };

/** Prices that are asked for and wait on us, the oldest first. */
export function QuotesOnUs({ quotes, workshop, role }: Props) {
  return (
    <section aria-labelledby="quotes">
      <h2 id="quotes">Prices asked for</h2>
      {quotes.onUs.length === 0 ? (
        <EmptyState>Nobody waits for a price.</EmptyState>
      ) : (
        <Rows label="Prices asked for" rows={quotes.onUs} workshop={workshop} role={role} />
      )}
      <p>
        <TextLink href="/workshop/quotes">All quotes that were asked for</TextLink>
      </p>
    </section>
  );
}

/** Prices that lapse soon, and those accepted that nobody has booked; nothing at all when there are none. */
export function QuotesOnCustomer({ quotes, workshop, role }: Props) {
  if (quotes.onCustomer.length === 0) return null;
  return (
    <section aria-labelledby="quotes-open">
      <h2 id="quotes-open">Prices to look after</h2>
      <Rows label="Prices to look after" rows={quotes.onCustomer} workshop={workshop} role={role} />
    </section>
  );
}

function Rows(props: { label: string; rows: readonly Row[]; workshop: WorkshopCard; role: Role }) {
  return (
    <SlipList label={props.label}>
      {props.rows.map((row) => {
        const action = quoteAction(row, props.role);
        return (
          <Slip
            key={row.quote.number}
            href={`/workshop/quotes/${row.quote.number}`}
            kind="Quote"
            number={showNumber(row.quote.number)}
            title={row.quote.device}
            tag={
              <LinkButton href={action.href} kind="second">
                {action.label}
              </LinkButton>
            }
            facts={[
              <StepTag key="step" row={row} locale={props.workshop.locale} />,
              ...factsOf(row, props.workshop),
            ]}
          />
        );
      })}
    </SlipList>
  );
}

/** The one action a row waits for, one tap away. */
export function quoteAction({ quote, step }: Row, role: Role): { label: string; href: Route } {
  const page = `/workshop/quotes/${quote.number}` as const;
  const actions: Record<QuoteStep, { label: string; href: Route }> = {
    'answer-request': may(role, 'money')
      ? { label: 'Write the quote', href: routeTo(`${page}/price`) }
      : { label: 'Read and ask', href: routeTo(page) },
    'lapses-soon': { label: 'Look at the price', href: routeTo(`${page}#prices`) },
    'not-booked': { label: 'Look at the quote', href: routeTo(page) },
  };
  return actions[step];
}

function StepTag({ row, locale }: { row: Row; locale: string }) {
  switch (row.step) {
    case 'answer-request':
      return row.answer && <AnswerTag due={row.answer} locale={locale} />;
    case 'lapses-soon':
      return (
        <Tag tone="warn">
          {row.daysHeld === 0
            ? 'lapses today'
            : row.daysHeld === 1
              ? 'lapses tomorrow'
              : `lapses in ${row.daysHeld} days`}
        </Tag>
      );
    case 'not-booked':
      return <Tag tone="good">accepted, not booked</Tag>;
  }
}

function factsOf({ quote, step }: Row, { currency, locale }: WorkshopCard): string[] {
  const photos = quote.photos === 1 ? '1 photo' : `${quote.photos} photos`;
  const since = formatDay(quote.waitsSince, locale, 'short');
  return [
    quote.customer,
    step === 'not-booked' ? `accepted ${since}` : step === 'lapses-soon' ? `sent ${since}` : `since ${since}`,
    ...(quote.gross === null || step === 'answer-request'
      ? []
      : [formatMoney(quote.gross, currency, locale)]),
    ...(quote.photos === 0 || step !== 'answer-request' ? [] : [photos]),
  ];
}
