import { Slip, SlipList } from '@/app/ui/docket/slip';
import { LinkButton } from '@/app/ui/page/button';
import { TextLink } from '@/app/ui/page/text-link';
import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import type { ToGiveBack } from '@/lib/invoices/list-to-give-back';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { RefundTag } from './refund-tag';

/** Rows listed here; the others are under Money. */
const MOST = 5;

/** Money that customers wait for, whoever is due it next first; nothing at all when there is none. */
export function MoneyToday(props: { rows: readonly ToGiveBack[]; today: Day; locale: string }) {
  const { rows, today, locale } = props;
  if (rows.length === 0) return null;
  return (
    <section aria-labelledby="give-back">
      <h2 id="give-back">Money to give back</h2>
      <SlipList label="Money to give back">
        {rows.slice(0, MOST).map((row) => (
          <Slip
            key={`${row.jobNumber}-${row.isPostage}`}
            href={`/workshop/jobs/${row.jobNumber}#money`}
            kind="Job"
            number={showNumber(row.jobNumber)}
            title={formatMoney(row.amount, row.currency, locale)}
            facts={[
              <RefundTag key="due" dueOn={row.dueOn} today={today} locale={locale} />,
              row.customer,
              `since ${formatDay(row.since, locale, 'short')}`,
              ...(row.isAfterWithdrawal ? ['after a withdrawal'] : []),
              ...(row.isPostage ? ['postage of a covered claim'] : []),
            ]}
            tag={
              <LinkButton href={`/workshop/jobs/${row.jobNumber}#money`} kind="second">
                Give back
              </LinkButton>
            }
          />
        ))}
      </SlipList>
      {rows.length > MOST ? (
        <p>
          <TextLink href="/workshop/money">{`All ${rows.length} under Money`}</TextLink>
        </p>
      ) : null}
    </section>
  );
}
