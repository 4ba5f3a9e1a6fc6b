import { ActionForm } from '@/app/ui/forms/action-form';
import { CheckboxGroup, RadioGroup } from '@/app/ui/forms/choices';
import { SubmitBar } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { DATA_QUESTION } from '@/lib/jobs/rules/booking';
import { batteryKind } from '@/lib/jobs/rules/posted-answer';
import {
  BATTERY_QUESTION,
  BATTERY_QUESTION_HELP,
  batteryAnswersFor,
} from '@/lib/parcels/rules/battery-answers';
import { saveParcel } from '../../actions';
import type { StepProps } from './step-props';

export function ParcelStep({ token, repair, answers }: StepProps) {
  const batteries = batteryAnswersFor(batteryKind(repair.model.battery));
  const known = repair.model.accessories;
  return (
    <ActionForm action={saveParcel.bind(null, token)}>
      {known.length > 0 ? (
        <CheckboxGroup
          name="accessories"
          label="What do you send along with the unit?"
          hint="Send as little as you can. We tick this list when the parcel arrives."
          optional
          choices={known.map((name) => ({ value: name, label: name }))}
          defaultValues={answers.parcel?.accessories ?? []}
        />
      ) : null}
      <TextField
        name="otherAccessory"
        label="Anything else in the parcel"
        hint="No loose batteries and no power banks, please: they must not travel in it."
        optional
        maxLength={80}
        defaultValue={answers.parcel?.otherAccessory}
      />
      {batteries.length > 0 ? (
        <RadioGroup
          name="battery"
          label={BATTERY_QUESTION}
          hint={BATTERY_QUESTION_HELP}
          choices={batteries}
          defaultValue={answers.parcel?.battery}
        />
      ) : null}
      <RadioGroup name="data" {...DATA_QUESTION} defaultValue={answers.parcel?.data} />
      <SubmitBar
        label="Continue"
        consequence="Next: your address."
        second={{ href: `/book/${token}/problem`, label: 'Back' }}
      />
    </ActionForm>
  );
}
