import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { mayInvoice } from '@/lib/invoices/rules/standing';
import { formatMoney } from '@/lib/money/amount';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { issueNow } from './actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';

/** The invoices and credit notes of a job, and the way to issue one before the unit is ready. */
export function InvoicesPart({
  job,
  workshop,
  mayIssue,
}: Pick<SheetProps, 'job' | 'workshop'> & { mayIssue: boolean }) {
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const agreed = agreedOf(job);
  return (
    <>
      {job.invoices.length > 0 ? (
        <Table
          caption="Invoices and credit notes"
          columns={[
            {
              head: 'Number',
              kind: 'rowhead',
              cell: (row) => (
                <TextLink href={`/workshop/money/invoices/${row.number}`}>
                  <NumberText text={row.number} />
                </TextLink>
              ),
            },
            { head: 'What', cell: (row) => (row.kind === 'invoice' ? 'invoice' : 'credit note') },
            { head: 'Issued', cell: (row) => formatDay(dayFromDate(row.issuedOn), workshop.locale, 'short') },
            {
              head: 'Amount',
              kind: 'number',
              cell: (row) => money(row.kind === 'invoice' ? row.payableMinor : -row.payableMinor),
            },
          ]}
          rows={job.invoices}
          rowKey={(row) => row.id}
        />
      ) : null}
      {mayIssue && mayInvoice(job) ? (
        <ActionForm
          action={issueNow.bind(null, job.number)}
          hidden={carriedFields(job.version)}
          label="Issue the invoice now"
          summary="Issue the invoice now"
        >
          <SubmitButton
            label="Issue the invoice"
            kind="second"
            consequence={`Over ${money(agreed?.grossMinor ?? 0)}, sent to the customer by mail.${job.readyAt ? '' : ' Without this it is issued automatically when the unit is ready.'}`}
          />
        </ActionForm>
      ) : null}
    </>
  );
}
