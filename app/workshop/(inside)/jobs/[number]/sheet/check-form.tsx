import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import type { JobRecord } from '@/lib/jobs/records';
import { enterCheck } from '../actions';
import { carriedFields } from '../carried-fields';

type Props = { job: JobRecord; check: JobRecord['sheet']['checks'][number]; isRedo: boolean };

/** One check's own form, with large targets for a gloved finger. */
export function CheckForm({ job, check, isRedo }: Props) {
  const hidden = { ...carriedFields(job.version), check: check.id };
  return (
    <ActionForm action={enterCheck.bind(null, job.number)} hidden={hidden} label={check.label}>
      {check.kind === 'reading' ? (
        <TextField
          name="reading"
          label="Reading"
          inputMode="decimal"
          autoComplete="off"
          width="short"
          mono
          maxLength={30}
          unit={check.unit ?? ''}
        />
      ) : null}
      {check.kind === 'choice' ? (
        <RadioGroup
          name="choice"
          label="What do you see?"
          choices={check.choices.map((choice) => ({ value: choice, label: choice }))}
        />
      ) : null}
      {check.kind === 'tick' ? (
        <RadioGroup
          name="tick"
          label="Does it hold?"
          choices={[
            { value: 'pass', label: 'Yes, it passes' },
            { value: 'fail', label: 'No, it fails' },
          ]}
        />
      ) : null}
      <TextField name="note" label="Note" optional maxLength={500} />
      <SubmitButton label={isRedo ? 'Enter it again' : 'Enter'} kind="second" />
    </ActionForm>
  );
}
