import { Table } from '@/app/ui/page/table';
import { NumberLink } from '@/app/workshop/number-link';
import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import type { ToGiveBack } from '@/lib/invoices/list-to-give-back';
import { REFUND_DAYS } from '@/lib/invoices/rules/owed-back';
import { readStage } from '@/lib/jobs/records';
import { STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { formatMoney } from '@/lib/money/amount';
import { RefundTag } from '../refund-tag';

/** Customers who have paid more than their job comes to, and who asked for the postage of a claim; nothing at all when there are none. */
export function GiveBackPart(props: { rows: readonly ToGiveBack[]; today: Day; locale: string }) {
  const { rows, today, locale } = props;
  if (rows.length === 0) return null;
  return (
    <section aria-labelledby="give-back-head" className="mb-6">
      <h2 id="give-back-head">Money to give back</h2>
      <p>
        More was paid than these jobs come to, or the postage of a covered claim was asked for. Give it back
        the way it came, or where the customer asked, then record it as a payment below zero on the job: the
        customer is told, and the row leaves this list. It is due within {REFUND_DAYS} days, as every customer
        is told; after a withdrawal the law sets that day.
      </p>
      <Table
        caption="By job, what is due next first"
        rows={rows}
        rowKey={(row) => `${row.jobNumber}-${row.isPostage}`}
        columns={[
          {
            head: 'Job',
            kind: 'rowhead',
            cell: (row) => <NumberLink of="jobs" number={row.jobNumber} part="money" />,
          },
          { head: 'Customer', cell: (row) => row.customer },
          {
            head: 'What it is',
            cell: (row) =>
              row.isPostage
                ? 'Postage of the claim'
                : row.isAfterWithdrawal
                  ? 'After a withdrawal'
                  : 'Paid too much',
          },
          { head: 'Stage', cell: (row) => STAGE_WORDS[readStage(row.stage)].label },
          {
            head: 'Since',
            cell: (row) => (
              <>
                {formatDay(row.since, locale, 'short')}{' '}
                <RefundTag dueOn={row.dueOn} today={today} locale={locale} />
              </>
            ),
          },
          {
            head: 'To give back',
            kind: 'number',
            cell: (row) => formatMoney(row.amount, row.currency, locale),
          },
        ]}
      />
    </section>
  );
}
