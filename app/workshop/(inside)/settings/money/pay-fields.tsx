import { CountField } from '@/app/ui/forms/count-field';
import { TextField } from '@/app/ui/forms/text-field';
import { TextLink } from '@/app/ui/page/text-link';
import { showIban } from '@/lib/invoices/rules/bank';
import type { WorkshopCard } from '@/lib/workshop/card';

/** How customers pay an invoice, and by when. */
export function PayFields({ workshop }: { workshop: WorkshopCard }) {
  return (
    <>
      <h2>How customers pay</h2>
      <p className="prose">
        An account that has no IBAN, or any other way to pay, is put into words under{' '}
        <TextLink href="/workshop/settings/texts">How to pay</TextLink>.
      </p>
      <CountField
        name="dueDays"
        label="An invoice is paid within"
        hint="Counted from the day it is issued. 0 for at once."
        unit="days"
        defaultValue={workshop.dueDays}
      />
      <TextField
        name="bankHolder"
        label="Account holder"
        hint="Empty: the workshop’s name."
        optional
        maxLength={70}
        defaultValue={workshop.bankHolder}
        autoComplete="off"
      />
      <TextField
        name="iban"
        label="IBAN"
        hint="Shown for bank transfers. In euro, invoices then carry a code for banking apps."
        optional
        mono
        width="half"
        maxLength={60}
        defaultValue={showIban(workshop.iban)}
        autoComplete="off"
      />
      <TextField
        name="bic"
        label="BIC"
        optional
        mono
        width="short"
        maxLength={20}
        defaultValue={workshop.bic}
        autoComplete="off"
      />
      <TextField
        name="payLink"
        label="Address of your payment page"
        hint="From any provider, beginning with https://. Where {amount}, {currency} and {reference} stand, the invoice’s own are filled in."
        optional
        mono
        maxLength={1000}
        defaultValue={workshop.payLink}
        autoComplete="off"
      />
    </>
  );
}
