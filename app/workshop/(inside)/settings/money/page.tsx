import type { Metadata } from 'next';
import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { MoneyField } from '@/app/ui/forms/money-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { decimalText } from '@/lib/money/amount';
import { currencyCodes } from '@/lib/money/currency';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { readWorkshop } from '@/lib/workshop/records';
import { requireStaff } from '../../../who';
import { saveMoney } from '../actions';

export const metadata: Metadata = { title: 'Money and tax' };

export default async function MoneyPage() {
  await requireStaff(rolesThatMay('settings'));
  const workshop = await readWorkshop();
  const { currency, locale } = workshop;
  const names = new Intl.DisplayNames([locale, 'en'], { type: 'currency' });
  const decimal = (minor: number) => decimalText(minor, currency);
  return (
    <>
      <PageHead above={<TextLink href="/workshop/settings">Settings</TextLink>} title="Money and tax" />
      <ActionForm action={saveMoney} hidden={{ seenAt: workshop.updatedAt.toISOString() }}>
        <Select
          name="currency"
          label="Currency"
          hint="It can no longer change once there are prices or quotes."
          width="half"
          choices={currencyCodes().map((code) => ({
            value: code,
            label: `${code} – ${names.of(code) ?? code}`,
          }))}
          defaultValue={currency}
        />
        <RadioGroup
          name="pricesIncludeTax"
          label="Prices in the catalogue"
          defaultValue={workshop.pricesIncludeTax ? 'yes' : 'no'}
          choices={[
            { value: 'yes', label: 'Include tax', hint: 'The usual way for selling to private customers.' },
            { value: 'no', label: 'Do not include tax', hint: 'Tax is added on quotes and invoices.' },
          ]}
          hint="Changing this does not recount prices: go through the catalogue afterwards."
        />
        <TextField
          name="taxNumber"
          label="Tax number"
          optional
          mono
          width="half"
          defaultValue={workshop.taxNumber}
          autoComplete="off"
        />
        <MoneyField
          name="inspectionFee"
          label="Inspection fee"
          hint="Shown before booking, taken off when the repair goes ahead. 0 for none."
          currency={currency}
          defaultValue={decimal(workshop.inspectionFeeMinor)}
        />
        <MoneyField
          name="returnFee"
          label="Return fee"
          hint="What a customer pays who declines a changed price. 0 for none."
          currency={currency}
          defaultValue={decimal(workshop.returnFeeMinor)}
        />
        <MoneyField
          name="labourRate"
          label="An hour at the bench costs you"
          hint="For the books only: what repairs under cover cost. Customers never see it."
          currency={currency}
          defaultValue={decimal(workshop.labourRateMinor)}
        />
        <TextField
          name="approvalDays"
          label="A price holds for"
          hint="At least 30 days, as the European repair form asks (Directive (EU) 2024/1799, Article 4)."
          inputMode="numeric"
          unit="days"
          width="short"
          defaultValue={workshop.approvalDays}
        />
        <SubmitButton
          label="Save money and tax"
          busy="Saving…"
          consequence="Counts for prices and quotes made from now on; those already sent stay as they are."
        />
        <p>
          <TextLink href="/workshop/settings">Leave as it is</TextLink>
        </p>
      </ActionForm>
    </>
  );
}
