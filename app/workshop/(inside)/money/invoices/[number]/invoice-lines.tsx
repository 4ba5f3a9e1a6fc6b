import { Table } from '@/app/ui/page/table';
import type { WholeInvoice } from '@/lib/invoices/records';
import { formatMoney } from '@/lib/money/amount';
import { rateInWords } from '@/lib/money/rate';

/** What an invoice says line by line, and the tax by rate. */
export function InvoiceLines({ whole: { facts }, locale }: { whole: WholeInvoice; locale: string }) {
  const money = (minor: number) => formatMoney(minor, facts.currency, locale);
  const { taxName } = facts.seller;
  return (
    <section aria-labelledby="lines">
      <h2 id="lines">Lines</h2>
      <Table
        caption="Lines"
        captionHidden
        rows={facts.lines}
        rowKey={(line) => String(line.position)}
        columns={[
          { head: 'What', kind: 'rowhead', cell: (line) => line.description },
          { head: taxName, cell: rateInWords },
          { head: `Without ${taxName}`, kind: 'number', cell: (line) => money(line.net) },
          ...(facts.isGross
            ? [
                {
                  head: `With ${taxName}`,
                  kind: 'number' as const,
                  cell: (line: { amount: number }) => money(line.amount),
                },
              ]
            : []),
        ]}
      />
      <Table
        caption={`${taxName} by rate`}
        rows={facts.breakdown}
        rowKey={(part) => `${part.category}${part.rateBps}`}
        columns={[
          { head: 'Rate', kind: 'rowhead', cell: rateInWords },
          { head: 'On', kind: 'number', cell: (part) => money(part.base) },
          { head: 'Amount', kind: 'number', cell: (part) => money(part.tax) },
        ]}
        keep
      />
    </section>
  );
}
