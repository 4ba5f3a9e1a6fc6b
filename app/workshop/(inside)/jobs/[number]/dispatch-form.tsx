import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { CountField } from '@/app/ui/forms/count-field';
import { MoneyField } from '@/app/ui/forms/money-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { factsOf } from '@/lib/jobs/facts';
import { isHeldForMoney } from '@/lib/jobs/rules/guards';
import { hasLeft, waitsForAddress } from '@/lib/jobs/rules/handover';
import { moveOf } from '@/lib/jobs/rules/stages';
import { decimalText, formatMoney } from '@/lib/money/amount';
import { carriersInUse } from '@/lib/parcels/records';
import type { BatteryVerdict } from '@/lib/parcels/rules/battery';
import { needsCustomsNote } from '@/lib/parcels/rules/customs';
import { centimetreText } from '@/lib/parcels/rules/measures';
import { PACKED_BATTERIES, PACKED_BATTERY_WORDS, packedVerdict } from '@/lib/parcels/rules/packed-battery';
import { batteryOfModel, parcelToAsk, readParcel } from '@/lib/parcels/stored-parcel';
import { carriedFields } from './carried-fields';
import { CarrierAnswers } from './carrier-answers';
import { sendBack } from './dispatch-actions';
import type { SheetProps } from './open-sheet';

const COLLECTED = 'The customer has collected it';

const SIDES = [
  { name: 'length', label: 'Length', at: 0 },
  { name: 'width', label: 'Width', at: 1 },
  { name: 'height', label: 'Height', at: 2 },
] as const;

export async function DispatchForm({ job, workshop }: SheetProps) {
  const facts = factsOf(job);
  const { owed } = facts;
  const { label, consequence } = moveOf('dispatch');
  const { currency, locale } = workshop;
  if (isHeldForMoney(facts)) {
    return (
      <Notice kind="warn" heading="Not paid yet">
        <p>
          {`${formatMoney(owed, currency, locale)} is still to pay. Record the payment under `}
          <a href="#money">Money</a>, then send it back.
        </p>
      </Notice>
    );
  }
  const carriers = await carriersInUse();
  const parcel = readParcel(job);
  const model = batteryOfModel(job);
  const isAbroad = needsCustomsNote({
    from: workshop.country,
    to: job.customer.country,
    free: workshop.customsFree,
  });
  return (
    <>
      {owed > 0 ? (
        <Notice kind="note" heading="Goes back unpaid">
          <p>{`${formatMoney(owed, currency, locale)} stays owed, as the owner decided. Credit it where you give it up.`}</p>
        </Notice>
      ) : null}
      {waitsForAddress(job.events) ? (
        <Notice kind="warn" heading="Its parcel came back">
          <p>The customer was asked whether the address is right, and has not answered yet.</p>
        </Notice>
      ) : null}
      <ActionForm
        action={sendBack.bind(null, job.number)}
        hidden={{ ...carriedFields(job.version), by: 'carrier' }}
        label={label}
      >
        <TextField
          name="carrier"
          label="Carrier"
          maxLength={80}
          list={carriers.map(({ name }) => name)}
          // One carrier alone is the one meant; of several the receipt in the hand says which.
          defaultValue={carriers.length === 1 ? carriers[0]?.name : undefined}
        />
        <TextField
          name="carrierReference"
          label="Carrier’s reference"
          hint="From the receipt. Postal references of the form RR 12345678 5 GB are checked by their check digit; any other is kept as you type it."
          mono
          autoComplete="off"
          maxLength={60}
        />
        {job.kind === 'claim' ? (
          <MoneyField
            name="postage"
            label="Postage we paid"
            hint="Part of what this claim costs us."
            currency={currency}
            optional
          />
        ) : null}
        <CountField
          name="weight"
          label="Weight, packed"
          unit="g"
          optional
          autoComplete="off"
          defaultValue={parcel.grams ?? undefined}
        />
        <div className="flex flex-wrap gap-x-6 gap-y-4">
          {SIDES.map((side) => (
            <TextField
              key={side.name}
              name={side.name}
              label={`${side.label}, packed`}
              inputMode="decimal"
              unit="cm"
              width="short"
              optional
              autoComplete="off"
              defaultValue={parcel.sides ? centimetreText(parcel.sides[side.at]) : undefined}
            />
          ))}
        </div>
        <MoneyField
          name="value"
          label="What the unit is worth"
          hint="Compared with what a carrier makes good, and put on a customs note."
          currency={currency}
          optional
          defaultValue={parcel.valueMinor === null ? undefined : decimalText(parcel.valueMinor, currency)}
        />
        {model.battery === 'none' ? null : (
          <RadioGroup
            name="battery"
            label="Battery"
            choices={PACKED_BATTERIES.map((value) => ({ value, label: PACKED_BATTERY_WORDS[value] }))}
            defaultValue={parcel.battery}
          />
        )}
        <SubmitButton
          kind="second"
          name="intent"
          value="work-out"
          label="Work out"
          busy="Working out…"
          consequence="Keeps the parcel’s weight, size and value, and shows what each carrier says. Sends nothing."
        />
        <SubmitButton label={label} consequence={consequence} />
      </ActionForm>
      <BatteryNote verdict={packedVerdict(model, parcel.battery)} />
      <CarrierAnswers carriers={carriers} parcel={parcelToAsk(parcel, model)} money={{ currency, locale }} />
      {isAbroad ? (
        <p>
          <TextLink href={`/workshop/jobs/${job.number}/customs`}>
            This parcel goes abroad: what its customs form asks
          </TextLink>
        </p>
      ) : null}
      <ActionForm
        action={sendBack.bind(null, job.number)}
        hidden={{ ...carriedFields(job.version), by: 'collected' }}
        label={COLLECTED}
      >
        <ConfirmButton
          label={COLLECTED}
          question="Does the customer have it in their hands?"
          confirm="Yes: it is collected"
          consequence={`Closes the job and tells the customer. ${hasLeft(job.events) ? 'The certificate stands as it was issued.' : 'Where a repair was done the certificate is issued, and cover counts from today.'}`}
        />
      </ActionForm>
      <p>
        <TextLink href="/workshop/dispatch">Everything that goes back today</TextLink>
      </p>
    </>
  );
}

/** Whether the packed battery may travel, with the mark the parcel needs. */
function BatteryNote({ verdict }: { verdict: BatteryVerdict }) {
  if (verdict.code === 'no-battery') return null;
  const heading = {
    post: 'The battery may go by post',
    'road-only': 'The battery may go by road only',
    'do-not-post': 'The battery may not be sent like this',
  }[verdict.may];
  return (
    <Notice kind={verdict.may === 'post' ? 'note' : 'warn'} heading={heading}>
      <p>{verdict.reasons.join(' ')}</p>
      {verdict.mark ? (
        <p>
          <strong>
            The parcel needs the lithium battery mark, at least 100 x 70 mm, beside the address.
          </strong>
        </p>
      ) : verdict.may === 'do-not-post' ? null : (
        <p>No battery mark is needed.</p>
      )}
      {verdict.chargeAtMost === null ? null : (
        <p>{`It travels best at ${verdict.chargeAtMost} % charge or less.`}</p>
      )}
    </Notice>
  );
}
