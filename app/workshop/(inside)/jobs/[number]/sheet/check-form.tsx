import { Checkbox, RadioGroup } from '@/app/ui/forms/choices';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { isMinimum } from '@/lib/bench/rules/checks';
import type { JobRecord } from '@/lib/jobs/records';
import { EnterHere } from './enter-here';

type Props = { check: JobRecord['sheet']['checks'][number]; isRedo: boolean; entryId: string };

/** One check's fields in the sheet's form, with large targets for a gloved finger and a button that enters this check alone. */
export function CheckForm({ check, isRedo, entryId }: Props) {
  const label = isRedo ? 'Enter it again' : 'Enter';
  return (
    <EnterHere label={check.label}>
      <input type="hidden" name={`entry-${check.id}`} value={entryId} />
      {check.kind === 'reading' ? (
        <TextField
          name={`reading-${check.id}`}
          label="Reading"
          inputMode="decimal"
          autoComplete="off"
          width="short"
          mono
          maxLength={30}
          unit={check.unit ?? ''}
        />
      ) : null}
      {isMinimum(check) ? (
        <Checkbox
          name={`over-${check.id}`}
          label="The meter read over its range"
          hint="Then the reading is where the range ends, for instance 200 where the meter showed >200 or OL."
        />
      ) : null}
      {check.kind === 'choice' ? (
        <RadioGroup
          name={`choice-${check.id}`}
          label="What do you see?"
          choices={check.choices.map((choice) => ({ value: choice, label: choice }))}
        />
      ) : null}
      {check.kind === 'tick' ? (
        <RadioGroup
          name={`tick-${check.id}`}
          label="Does it hold?"
          choices={[
            { value: 'pass', label: 'Yes, it passes' },
            { value: 'fail', label: 'No, it fails' },
          ]}
        />
      ) : null}
      <TextField name={`note-${check.id}`} label="Note" optional maxLength={500} />
      <SubmitButton label={label} busy={label} kind="second" name="check" value={check.id} />
    </EnterHere>
  );
}
