import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { formatDay } from '@/lib/calendar/format';
import { readStage, standingPromise } from '@/lib/jobs/records';
import { PROMISE_STAGES } from '@/lib/jobs/rules/stage-sets';
import { carriedFields } from './carried-fields';
import { moveThePromise } from './keeping-actions';
import type { SheetProps } from './open-sheet';

/** The promised day can be moved until the unit is ready, or its repair called off, with a reason that the customer is told. */
export function PromisePart({ job, workshop }: SheetProps) {
  const promised = standingPromise(job);
  if (!promised || !PROMISE_STAGES.includes(readStage(job.stage))) return null;
  return (
    <div id="promise">
      <ActionForm
        action={moveThePromise.bind(null, job.number)}
        hidden={carriedFields(job.version)}
        label="Move the promise"
        summary="Move the promise"
      >
        <p>{`Promised for ${formatDay(promised, workshop.locale, 'weekday')}. Customers mind a later day less when they hear of it early.`}</p>
        <TextField name="to" label="New day" type="date" width="half" hint="A working day." />
        <TextArea
          name="reason"
          label="Why"
          hint="In words the customer can follow; it stands in the mail as you write it."
          rows={2}
          maxLength={500}
        />
        <SubmitButton
          label="Move the promise"
          kind="second"
          consequence="Tells the customer the new day and why, by mail and on the private page."
        />
      </ActionForm>
    </div>
  );
}
