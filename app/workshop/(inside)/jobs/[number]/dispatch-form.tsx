import { ActionForm } from '@/app/ui/forms/action-form';
import { MoneyField } from '@/app/ui/forms/money-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Notice } from '@/app/ui/page/notice';
import { factsOf } from '@/lib/jobs/facts';
import { moveOf } from '@/lib/jobs/rules/stages';
import { formatMoney } from '@/lib/money/amount';
import { CARRIERS } from '@/lib/parcels/rules/carriers';
import { sendBack } from './actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';

export function DispatchForm({ job, workshop }: SheetProps) {
  const { owed } = factsOf(job);
  const { label, consequence } = moveOf('dispatch');
  if (owed > 0) {
    return (
      <Notice kind="warn" heading="Not paid yet">
        <p>
          {`${formatMoney(owed, workshop.currency, workshop.locale)} is still to pay. Record the payment under `}
          <a href="#money">Money</a>, then send it back.
        </p>
      </Notice>
    );
  }
  return (
    <ActionForm action={sendBack.bind(null, job.number)} hidden={carriedFields(job.version)} label={label}>
      <TextField
        name="carrier"
        label="Carrier"
        maxLength={80}
        list={CARRIERS.map((carrier) => carrier.name)}
      />
      <TextField
        name="carrierReference"
        label="Carrier’s reference"
        hint="From the receipt. Postal references of the form RR 12345678 5 GB are checked by their check digit."
        mono
        autoComplete="off"
        maxLength={60}
      />
      <MoneyField
        name="postage"
        label="Postage we paid"
        hint={job.kind === 'claim' ? 'Part of what this claim costs us.' : undefined}
        currency={workshop.currency}
        optional
      />
      <SubmitButton label={label} consequence={consequence} />
    </ActionForm>
  );
}
