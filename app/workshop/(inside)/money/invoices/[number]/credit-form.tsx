import { newFormKey } from '@/app/form-key';
import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { MoneyField } from '@/app/ui/forms/money-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import type { WholeInvoice } from '@/lib/invoices/records';
import { type CreditLeft, creditField } from '@/lib/invoices/rules/credit';
import { formatMoney } from '@/lib/money/amount';
import { creditAction } from './actions';

type Props = { whole: WholeInvoice; left: CreditLeft; locale: string };

/** Takes all or part of an invoice off with a credit note. */
export function CreditForm({ whole: { facts }, left, locale }: Props) {
  const money = (minor: number) => formatMoney(minor, facts.currency, locale);
  const open = facts.lines.filter((line) => (left.byPosition.get(line.position) ?? 0) !== 0);
  return (
    <section aria-labelledby="credit">
      <h2 id="credit">Take something off</h2>
      <p>
        An invoice is never changed. What was wrong in it, or what you give back, is taken off by a credit
        note with a number of its own.
      </p>
      <ActionForm
        action={creditAction.bind(null, facts.number)}
        hidden={{ formKey: newFormKey(), left: left.payable }}
        label="Write a credit note"
        summary="Write a credit note"
      >
        <RadioGroup
          name="choice"
          label="What to take off"
          defaultValue="everything"
          choices={[
            { value: 'everything', label: `Everything that is left: ${money(left.payable)}` },
            { value: 'lines', label: 'Amounts of single lines, entered below' },
          ]}
        />
        {open.map((line) => (
          <MoneyField
            key={line.position}
            name={creditField(line.position)}
            label={line.description}
            optional
            hint={`Up to ${money(left.byPosition.get(line.position) ?? 0)}, ${facts.isGross ? 'with' : 'without'} ${facts.seller.taxName}. Empty for nothing.`}
            currency={facts.currency}
          />
        ))}
        <TextArea
          name="reason"
          label="Why, in words the customer can follow"
          hint="Stands on the credit note and in the mail."
          rows={3}
        />
        <SubmitButton
          label="Issue the credit note"
          consequence="Takes the next number, writes to the customer, and is kept for good. Money to give back is recorded on the job sheet."
        />
      </ActionForm>
    </section>
  );
}
