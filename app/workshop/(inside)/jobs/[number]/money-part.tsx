import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { MoneyField } from '@/app/ui/forms/money-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import type { Staff } from '@/app/workshop/who';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { isForPrice, isPriceOpen } from '@/lib/invoices/rules/balance';
import { factsOf } from '@/lib/jobs/facts';
import { PAYMENT_METHODS } from '@/lib/jobs/record-payment';
import { BY_TELLING } from '@/lib/jobs/rules/told';
import { decimalText, formatMoney } from '@/lib/money/amount';
import { may } from '@/lib/people/rules/roles';
import { isAgreedTo } from '@/lib/quotes/rules/agreed';
import { readPostageStanding } from '@/lib/warranty/stored-postage';
import { paysPostage } from '@/lib/warranty/stored-ruling';
import { paidBack } from '@/lib/warranty/write-closed-claim';
import { RevisionLines } from '../../price-lines/revision-lines';
import { addPayment } from './actions';
import { carriedFields } from './carried-fields';
import { InvoicesPart } from './invoices-part';
import { JournalNote } from './journal-note';
import type { SheetProps } from './open-sheet';
import { PostagePart } from './postage-part';

const STATE_WORDS: Record<string, string> = {
  sent: 'written, waits for an answer',
  accepted: 'agreed',
  declined: 'declined',
  replaced: 'replaced',
};

/** What staff wrote as the first price of a parcel without a booking is nobody's agreement. */
function stateWords(revision: { state: string; revision: number; decidedBy: string | null }): string {
  if (revision.state === 'accepted' && !isAgreedTo(revision)) return 'nothing is agreed yet';
  return STATE_WORDS[revision.state] ?? revision.state;
}

function byWords(decidedBy: string | null): string {
  return decidedBy === BY_TELLING ? 'written down by us' : `by the ${decidedBy ?? ''}`;
}

/** Every revision of the price, the payments, and what is owed. */
export function MoneyPart({ job, workshop, who }: SheetProps & { who: Staff }) {
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const { owed } = factsOf(job);
  const today = dayInZone(now(), workshop.timeZone);
  const hasPaid = job.payments.length > 0;
  // Where something is to be paid for the job itself, that comes first.
  const paid = paidBack(job);
  const postage =
    owed === 0 && readPostageStanding(job.claim) === 'asked' ? (job.claim?.postageMinor ?? 0) - paid : null;
  const revisions = job.quotes[0]?.revisions ?? [];
  return (
    <section id="money" aria-labelledby="money-head">
      <h2 id="money-head">Money</h2>
      {revisions.toReversed().map((revision) => (
        <details key={revision.id} open={revision.state === 'accepted' || revision.state === 'sent'}>
          <summary>{`Revision ${revision.revision}: ${money(revision.grossMinor)}, ${stateWords(revision)}`}</summary>
          <p>{revision.reason}</p>
          <RevisionLines revision={revision} taxName={workshop.taxName} money={money} />
          <Facts
            items={[
              {
                term: 'Answered',
                text: revision.decidedAt
                  ? `${formatDay(dayInZone(revision.decidedAt, workshop.timeZone), workshop.locale, 'short')}, ${byWords(revision.decidedBy)}: ${revision.agreedText ?? ''}`
                  : null,
              },
            ]}
          />
        </details>
      ))}
      <InvoicesPart job={job} workshop={workshop} mayIssue={may(who.role, 'money')} />
      {hasPaid ? (
        <Table
          caption="Payments"
          columns={[
            {
              head: 'Received',
              kind: 'rowhead',
              cell: (row) => formatDay(dayFromDate(row.receivedOn), workshop.locale, 'short'),
            },
            {
              head: 'How',
              cell: (row) =>
                [isForPrice(row) ? '' : 'postage of the claim', row.method, row.reference]
                  .filter((text) => text !== '')
                  .join(', '),
            },
            { head: 'Amount', kind: 'number', cell: (row) => money(row.amountMinor) },
          ]}
          rows={job.payments}
          rowKey={(row) => row.id}
        />
      ) : null}
      {may(who.role, 'money') ? (
        <JournalNote payments={job.payments} today={today} locale={workshop.locale} />
      ) : null}
      <p>
        <strong>
          {owed > 0
            ? `Left to pay: ${money(owed)}`
            : owed < 0 && isPriceOpen(job)
              ? `${money(-owed)} is paid towards the price that is still to be agreed.`
              : owed < 0
                ? `To give back: ${money(-owed)}. Pay it back the way it came, then record it with a minus sign.`
                : 'Nothing is owed.'}
        </strong>
      </p>
      {job.payments.some(isForPrice) ? (
        <p>
          <TextLink href={`/workshop/jobs/${job.number}/receipt.pdf`} file>
            Receipt (PDF)
          </TextLink>
          {may(who.role, 'money') ? (
            <>
              {', '}
              <TextLink href={`/workshop/money/statement/${job.number}`}>statement of this customer</TextLink>
            </>
          ) : null}
        </p>
      ) : null}
      <PostagePart job={job} workshop={workshop} mayEnd={may(who.role, 'money')} />
      {may(who.role, 'money') ? (
        <ActionForm
          action={addPayment.bind(null, job.number)}
          hidden={{ ...carriedFields(job.version), owed, payments: job.payments.length }}
          label="Record a payment"
          summary="Record a payment"
          isOpen={(job.stage === 'ready' && owed > 0) || (owed < 0 && !isPriceOpen(job)) || postage !== null}
        >
          <MoneyField
            name="amount"
            label="Amount"
            hint="Money given back is entered with a minus sign."
            currency={workshop.currency}
            defaultValue={
              postage !== null
                ? decimalText(-postage, workshop.currency)
                : owed === 0 || isPriceOpen(job)
                  ? undefined
                  : decimalText(owed, workshop.currency)
            }
          />
          <Select
            name="method"
            label="How"
            choices={PAYMENT_METHODS.map((method) => ({ value: method, label: method }))}
            defaultValue="bank transfer"
          />
          <TextField name="reference" label="Reference" optional maxLength={80} />
          <TextField
            name="receivedOn"
            label="Received on"
            type="date"
            width="short"
            max={today}
            defaultValue={today}
          />
          {paysPostage(job.claim) || paid > 0 ? (
            <RadioGroup
              name="purpose"
              label="What it is for"
              defaultValue={postage === null ? 'price' : 'claim-postage'}
              choices={[
                { value: 'price', label: 'The price of this job' },
                {
                  value: 'claim-postage',
                  label: 'Their postage to us, paid back with a minus sign: the claim is covered',
                  hint: paid > 0 ? 'Without a minus sign it corrects an entry of ours.' : undefined,
                },
              ]}
            />
          ) : null}
          <RadioGroup
            name="tell"
            label="Mail to the customer"
            defaultValue="yes"
            choices={[
              { value: 'yes', label: 'Thank them, or say that the money is on its way' },
              { value: 'no', label: 'None: this corrects an entry of ours' },
            ]}
          />
          <SubmitButton
            label="Record the payment"
            consequence="Kept for good with your name; a mistake is corrected by a second entry."
          />
        </ActionForm>
      ) : null}
    </section>
  );
}
