import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { RadioGroup } from '@/app/ui/forms/choices';
import { CountField } from '@/app/ui/forms/count-field';
import { MoneyField } from '@/app/ui/forms/money-field';
import { Select } from '@/app/ui/forms/select';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { wordsLocale } from '@/lib/calendar/language';
import { decimalText } from '@/lib/money/amount';
import { currencyCodes } from '@/lib/money/currency';
import { requireStaff } from '../../../who';
import { saveMoney } from '../actions';
import { SettingsForm } from '../settings-form';
import { PayFields } from './pay-fields';
import { RightsFields } from './rights-fields';

export const metadata: Metadata = { title: 'Money and tax' };

export default async function MoneyPage() {
  await requireStaff('settings');
  const workshop = await readWorkshop();
  const { currency, locale } = workshop;
  const names = new Intl.DisplayNames(wordsLocale(locale), { type: 'currency' });
  const decimal = (minor: number) => decimalText(minor, currency);
  return (
    <>
      <PageHead above={<TextLink href="/workshop/settings">Settings</TextLink>} title="Money and tax" />
      <SettingsForm
        action={saveMoney}
        workshop={workshop}
        save="Save money and tax"
        consequence="Counts for prices, quotes and invoices made from now on; those already sent stay as they are."
      >
        <Select
          name="currency"
          label="Currency"
          hint="It can no longer change once a customer was sent a price or booked. Changing it does not recount the price list, what parts cost or what carriers make good: go through them afterwards."
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
          name="taxName"
          label="What the tax is called"
          hint="As it stands on invoices: VAT, GST, MwSt."
          width="short"
          maxLength={20}
          defaultValue={workshop.taxName}
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
        <TextField
          name="taxExemptReason"
          label="Why a line is exempt"
          hint="Printed on invoices that have an exempt line, as the tax office words it."
          optional
          maxLength={200}
          defaultValue={workshop.taxExemptReason}
        />
        <MoneyField
          name="inspectionFee"
          label="Inspection fee"
          hint="Shown before booking. 0 for none."
          currency={currency}
          defaultValue={decimal(workshop.inspectionFeeMinor)}
        />
        <RadioGroup
          name="isInspectionFeeTakenOff"
          label="When the repair goes ahead, the inspection fee is"
          defaultValue={workshop.isInspectionFeeTakenOff ? 'yes' : 'no'}
          choices={[
            { value: 'yes', label: 'Taken off the price' },
            { value: 'no', label: 'Paid on top of it' },
          ]}
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
        <CountField
          name="approvalDays"
          label="A price holds for"
          hint="At least 30 days, as the European repair form asks (Directive (EU) 2024/1799, Article 4)."
          unit="days"
          defaultValue={workshop.approvalDays}
        />
        <CountField
          name="remindDays"
          label="A customer is reminded of it"
          hint="Once, when no answer has come."
          unit="days before it ends"
          defaultValue={workshop.remindDays}
        />
        <PayFields workshop={workshop} />
        <RightsFields workshop={workshop} />
      </SettingsForm>
    </>
  );
}
