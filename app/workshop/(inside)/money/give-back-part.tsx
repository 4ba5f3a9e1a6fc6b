import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import type { ToGiveBack } from '@/lib/invoices/list-to-give-back';
import { readStage } from '@/lib/jobs/records';
import { STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';

/** Customers who have paid more than their job comes to; nothing at all when there are none. */
export function GiveBackPart({ rows, locale }: { rows: readonly ToGiveBack[]; locale: string }) {
  if (rows.length === 0) return null;
  return (
    <section aria-labelledby="give-back-head" className="mb-6">
      <h2 id="give-back-head">Money to give back</h2>
      <p>
        More was paid than these jobs come to. Give it back the way it came, then record it as a payment below
        zero on the job: the customer is told, and the row leaves this list.
      </p>
      <Table
        caption="By job, the greatest amount first"
        rows={rows}
        rowKey={(row) => row.jobNumber}
        columns={[
          {
            key: 'job',
            head: 'Job',
            kind: 'rowhead',
            cell: (row) => (
              <TextLink href={`/workshop/jobs/${row.jobNumber}#money`}>
                <NumberText text={showNumber(row.jobNumber)} />
              </TextLink>
            ),
          },
          { key: 'customer', head: 'Customer', cell: (row) => row.customer },
          { key: 'stage', head: 'Stage', cell: (row) => STAGE_WORDS[readStage(row.stage)].label },
          {
            key: 'amount',
            head: 'To give back',
            kind: 'number',
            cell: (row) => formatMoney(row.amount, row.currency, locale),
          },
        ]}
      />
    </section>
  );
}
