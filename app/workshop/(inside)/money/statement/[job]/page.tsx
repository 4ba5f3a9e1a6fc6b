import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberLink } from '@/app/workshop/number-link';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import type { Entry } from '@/lib/invoices/rules/statement';
import { statementOf } from '@/lib/invoices/statement';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { formatMoney } from '@/lib/money/amount';
import { showNumber, showTyped } from '@/lib/numbers/job-number';
import { requireStaff } from '../../../../who';

type Props = { params: Promise<{ job: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Statement, ${showTyped((await params).job)}` };
}

const KIND_WORDS: Record<Entry['kind'], string> = {
  invoice: 'Invoice',
  'credit-note': 'Credit note',
  payment: 'Paid',
  'given-back': 'Given back',
};

export default async function StatementPage({ params }: Props) {
  await requireStaff('money');
  const job = await jobByNumber((await params).job);
  const workshop = await readWorkshop();
  const statement = job && (await statementOf(job.id, workshop.currency));
  if (!statement) nothingHere();
  const { locale, timeZone } = workshop;
  const money = (minor: number) => formatMoney(minor, statement.currency, locale);
  const whose =
    statement.email === ''
      ? `Job ${showNumber(job.number)} alone: the address it was booked with was removed.`
      : `All jobs booked with ${statement.email}.`;
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/money">Money</TextLink>}
        title={`Statement for ${statement.name}`}
        lead={`${workshop.name}, ${formatDay(dayInZone(now(), timeZone), locale, 'short')}. ${whose}`}
      >
        <p>Print this page to send it: the bar above and the buttons stay off the paper.</p>
      </PageHead>
      <Table
        caption="Invoices, credit notes and payments"
        captionHidden
        rows={statement.rows.map((row, place) => ({ ...row, place }))}
        rowKey={(row) => String(row.place)}
        empty="Nothing was invoiced or paid yet."
        columns={[
          { head: 'Date', kind: 'rowhead', cell: (row) => formatDay(row.on, locale, 'short') },
          {
            head: 'What',
            cell: (row) =>
              row.kind === 'invoice' || row.kind === 'credit-note' ? (
                <TextLink href={`/workshop/money/invoices/${row.what}`}>
                  {`${KIND_WORDS[row.kind]} ${row.what}`}
                </TextLink>
              ) : (
                `${KIND_WORDS[row.kind]}, ${row.what}`
              ),
          },
          { head: 'Job', cell: (row) => <NumberLink of="jobs" number={row.job} part="money" /> },
          { head: 'Amount', kind: 'number', cell: (row) => money(row.amount) },
          { head: 'Owed after it', kind: 'number', cell: (row) => money(row.balance) },
        ]}
      />
      <p className="mt-6">
        <strong>{owedSentence(statement.owed, money)}</strong>
      </p>
    </>
  );
}

function owedSentence(owed: number, money: (minor: number) => string): string {
  if (owed > 0) return `Left to pay on all jobs together: ${money(owed)}.`;
  if (owed < 0) return `To be given back: ${money(-owed)}.`;
  return 'Nothing is owed on either side.';
}
