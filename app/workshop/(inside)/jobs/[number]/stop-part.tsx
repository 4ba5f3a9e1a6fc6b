import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { TextArea } from '@/app/ui/forms/text-area';
import type { JobRecord } from '@/lib/jobs/records';
import { moveOf } from '@/lib/jobs/rules/stages';
import { STOP_WORDS, STOPS } from '@/lib/jobs/rules/stop';
import { stopWork } from './bench-actions';
import { carriedFields } from './carried-fields';

/** The way back for a unit that is not repaired after all, where the customer gives no answer on their page. */
export function StopPart({ job }: { job: Pick<JobRecord, 'number' | 'version'> }) {
  const { label, consequence } = moveOf('stop-repair');
  return (
    <ActionForm action={stopWork.bind(null, job.number)} hidden={carriedFields(job.version)} label={label}>
      <ConfirmButton
        label={label}
        question={`${label}?`}
        confirm={`Yes: ${label.toLowerCase()}`}
        consequence={consequence}
      >
        <RadioGroup
          name="why"
          label="Why it is not repaired"
          choices={STOPS.map((value) => ({
            value,
            label: STOP_WORDS[value].label,
            hint: STOP_WORDS[value].consequence,
          }))}
        />
        <TextArea
          name="reason"
          label="In your words"
          hint="The customer reads it, in the mail and in the history of the price."
          rows={3}
          maxLength={1000}
        />
      </ConfirmButton>
    </ActionForm>
  );
}
