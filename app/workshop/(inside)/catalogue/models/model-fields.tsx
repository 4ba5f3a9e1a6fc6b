import { Checkbox, RadioGroup } from '@/app/ui/forms/choices';
import { CountField } from '@/app/ui/forms/count-field';
import { Select } from '@/app/ui/forms/select';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import type { readModel } from '@/lib/catalogue/staff-records';
import { ListedChoice } from '../listed-choice';
import { BATTERY_WORDS, choicesOf, SERIAL_RULE_WORDS } from '../words';

type Known = NonNullable<Awaited<ReturnType<typeof readModel>>>;
type Props = { known?: Known | undefined; families: readonly { id: string; name: string }[] };

/** What the catalogue knows of a model, for adding and for changing. */
export function ModelFields({ known, families }: Props) {
  return (
    <>
      <TextField name="maker" label="Maker" width="half" autoComplete="off" defaultValue={known?.maker} />
      <TextField name="name" label="Model" width="half" autoComplete="off" defaultValue={known?.name} />
      <Select
        name="familyId"
        label="Family"
        width="half"
        empty="Choose a family"
        choices={families.map((family) => ({ value: family.id, label: family.name }))}
        defaultValue={known?.familyId ?? (families.length === 1 ? families[0]?.id : undefined)}
      />
      <TextArea
        name="aliases"
        label="Other names"
        hint="One a line. Customers find the model by these too."
        optional
        rows={3}
        defaultValue={known?.aliases.join('\n')}
      />
      <TextArea
        name="accessories"
        label="What comes with it"
        hint="One a line. The booking asks which of these are in the parcel."
        optional
        rows={4}
        defaultValue={known?.accessories.join('\n')}
      />
      <CountField
        name="weightGrams"
        label="Weight"
        hint="0 when not known. Heavy units get a stronger box on the packing slip."
        unit="g"
        defaultValue={known?.weightGrams ?? 0}
      />
      <CountField
        name="lengthMm"
        label="Length"
        hint="Outer size, with what sticks out. 0 for all three when not known."
        unit="mm"
        defaultValue={known?.lengthMm ?? 0}
      />
      <CountField name="widthMm" label="Width" unit="mm" defaultValue={known?.widthMm ?? 0} />
      <CountField name="heightMm" label="Height" unit="mm" defaultValue={known?.heightMm ?? 0} />
      <TextField
        name="tariffNumber"
        label="Tariff number"
        hint="For customs notes, when a unit crosses a border. Your customs office or broker tells which one applies."
        optional
        mono
        inputMode="numeric"
        width="half"
        autoComplete="off"
        defaultValue={known?.tariffNumber}
      />
      <h2>Serial</h2>
      <TextField
        name="serialPlace"
        label="Where it stands"
        hint="As a customer would look for it."
        optional
        width="half"
        defaultValue={known?.serialPlace}
      />
      <TextField
        name="serialExample"
        label="Example"
        optional
        mono
        width="half"
        defaultValue={known?.serialExample}
      />
      <TextField
        name="serialPattern"
        label="Pattern"
        hint="Capital letters, and \d{4} for four digits. A serial that does not fit gives a warning, never a refusal."
        optional
        mono
        width="half"
        defaultValue={known?.serialPattern ?? ''}
      />
      <Select
        name="serialRule"
        label="Check character"
        width="half"
        choices={choicesOf(SERIAL_RULE_WORDS)}
        defaultValue={known?.serialRule ?? 'none'}
      />
      <h2>Battery and mains</h2>
      <RadioGroup
        name="battery"
        label="Battery"
        choices={choicesOf(BATTERY_WORDS)}
        defaultValue={known?.battery}
      />
      <TextField
        name="batteryWh"
        label="Size of a lithium-ion battery"
        hint="Volts times ampere-hours. Decides whether the unit may be posted, and how."
        optional
        unit="Wh"
        inputMode="decimal"
        width="short"
        defaultValue={known?.batteryWh ?? ''}
      />
      <Checkbox
        name="isMainsPowered"
        label="Runs on mains voltage inside"
        hint="Shows the mains cautions at the bench. A wall adapter does not count."
        defaultChecked={known?.isMainsPowered ?? false}
      />
      <ListedChoice known={known} />
    </>
  );
}
