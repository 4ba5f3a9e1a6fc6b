import { Checkbox, RadioGroup } from '@/app/ui/forms/choices';
import { CountField } from '@/app/ui/forms/count-field';
import { MoneyField } from '@/app/ui/forms/money-field';
import { TextField } from '@/app/ui/forms/text-field';
import { decimalText } from '@/lib/money/amount';
import type { CarrierRow } from '@/lib/parcels/records';
import { USUAL_TRANSIT } from '@/lib/parcels/rules/carriers';
import { centimetreText } from '@/lib/parcels/rules/measures';

type Props = { carrier: CarrierRow | null; place: number; currency: string };

/** The questions about a carrier; a new one starts with what many of them have. */
export function CarrierFields({ carrier, place, currency }: Props) {
  return (
    <>
      <TextField
        name="name"
        label="Name"
        width="half"
        maxLength={80}
        autoComplete="off"
        defaultValue={carrier?.name}
      />
      <RadioGroup
        name="kind"
        label="How its parcels travel"
        defaultValue={carrier?.kind ?? 'post'}
        choices={[
          {
            value: 'post',
            label: 'As it likes, also by air',
            hint: 'Takes lithium batteries only when they are fitted in the unit.',
          },
          {
            value: 'road',
            label: 'By road only',
            hint: 'Has said in writing that nothing flies, and takes loose lithium batteries with their mark.',
          },
        ]}
      />
      <CountField
        name="divisor"
        label="Cubic centimetres to a kilogram"
        hint="Often 5000 or 6000. Length × width × height, divided by it, is the weight by volume."
        unit="cm³/kg"
        defaultValue={carrier?.volume.divisor ?? 5000}
      />
      <Checkbox
        name="wholeSides"
        label="Sides are rounded to whole centimetres first"
        defaultChecked={carrier?.volume.wholeSides ?? false}
      />
      <CountField
        name="step"
        label="Weight is rounded up to steps of"
        unit="g"
        defaultValue={carrier?.volume.step ?? 500}
      />
      <TextField
        name="heaviest"
        label="Heaviest parcel"
        inputMode="decimal"
        unit="kg"
        width="short"
        defaultValue={carrier ? carrier.maxWeight / 1000 : 20}
      />
      <TextField
        name="longest"
        label="Longest side"
        inputMode="decimal"
        unit="cm"
        width="short"
        defaultValue={carrier ? centimetreText(carrier.longestSide) : '100'}
      />
      <MoneyField
        name="valueUpTo"
        label="Makes good up to"
        hint="A unit that is worth more cannot be sent with this carrier."
        currency={currency}
        defaultValue={carrier ? decimalText(carrier.maxValueMinor, currency) : undefined}
      />
      <CountField
        name="daysHome"
        label="The longest its parcels usually travel"
        hint="Cover that starts with delivery, and days given back after a claim, count to the last of these days: rather too long than too short."
        unit="working days"
        defaultValue={carrier?.transit.home ?? USUAL_TRANSIT.home}
      />
      <CountField
        name="daysAbroad"
        label="The same to another country"
        unit="working days"
        defaultValue={carrier?.transit.abroad ?? USUAL_TRANSIT.abroad}
      />
      <TextField
        name="tracking"
        label="Its page on a parcel"
        hint="Address that begins with https, with {reference} where the carrier’s reference goes. Customers get it as a link."
        optional
        maxLength={300}
        autoComplete="off"
        defaultValue={carrier?.tracking ?? ''}
      />
      <CountField name="position" label="Place on the list" defaultValue={place} />
      <Checkbox
        name="isUsed"
        label="We send with it"
        hint="Without the tick it is not offered any more; links to parcels it has taken still work."
        defaultChecked={carrier?.isUsed ?? true}
      />
    </>
  );
}
