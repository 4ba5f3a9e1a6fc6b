import { Facts } from '@/app/ui/docket/facts';
import { Table } from '@/app/ui/page/table';
import { dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { owed, shownLines } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';
import type { PartProps } from './part-props';

/** The agreed price, what was paid, what is left, and how to pay it. */
export function MoneyPart({ job, workshop }: PartProps) {
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const agreed = job.quotes[0]?.revisions.find((revision) => revision.state === 'accepted');
  if (!agreed) return null;
  const left = owed(agreed.grossMinor, job.payments);
  const mayPay = left > 0 && ['ready', 'declined', 'unclaimed', 'on-bench', 'proving'].includes(job.stage);
  return (
    <section aria-labelledby="money">
      <h2 id="money">Price</h2>
      <Table
        caption={agreed.isGross ? 'Agreed, with tax' : 'Agreed, before tax'}
        columns={[
          { key: 'what', head: 'What', kind: 'rowhead', cell: (line) => line.description },
          { key: 'amount', head: 'Amount', kind: 'number', cell: (line) => money(line.amount) },
        ]}
        rows={shownLines(agreed.lines.map(readLine)).map((line, place) => ({ ...line, place }))}
        rowKey={(line) => String(line.place)}
        keep
      />
      <Facts
        items={[
          { term: 'Together, with tax', text: money(agreed.grossMinor) },
          { term: 'Tax in it', text: agreed.taxMinor === 0 ? null : money(agreed.taxMinor) },
          ...job.payments.map((payment) => ({
            term: `${payment.amountMinor < 0 ? 'Given back' : 'Paid'} on ${formatDay(dayFromDate(payment.receivedOn), workshop.locale, 'short')}`,
            text: `${money(Math.abs(payment.amountMinor))}, ${payment.method}`,
          })),
          { term: 'Left to pay', text: money(Math.max(0, left)) },
          { term: 'Paid too much', text: left < 0 ? `${money(-left)}. We give it back.` : null },
        ]}
      />
      {mayPay && workshop.paymentText !== '' ? (
        <p className="written">
          {`${workshop.paymentText} Amount: ${money(left)}. Reference: ${showNumber(job.number)}.`}
        </p>
      ) : null}
    </section>
  );
}
