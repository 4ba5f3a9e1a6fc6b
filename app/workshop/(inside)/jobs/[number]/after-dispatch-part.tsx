import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import type { JobRecord } from '@/lib/jobs/records';
import { moveOf } from '@/lib/jobs/rules/stages';
import { isUnchecked } from '@/lib/parcels/rules/reference';
import type { WorkshopCard } from '@/lib/workshop/card';
import { carriedFields } from './carried-fields';
import { correctReferenceAction, takeBack } from './dispatch-actions';
import { SearchPart } from './search-part';

/** What can still happen to a parcel that a carrier has: it does not come, its reference was written down wrong, or it came back. */
export function AfterDispatchPart({ job, workshop }: { job: JobRecord; workshop: WorkshopCard }) {
  const { label, consequence } = moveOf('came-back');
  return (
    <>
      <SearchPart job={job} workshop={workshop} />
      <ActionForm
        action={correctReferenceAction.bind(null, job.number)}
        hidden={carriedFields(job.version)}
        label="Correct the carrier’s reference"
        summary="Correct the carrier’s reference"
      >
        <TextField
          name="carrierReference"
          label="Carrier’s reference"
          hint={`From the receipt of ${job.carrier}.${isUnchecked(job.carrierReference) ? ' This one could not be checked: a slip in it shows nowhere.' : ''}`}
          mono
          autoComplete="off"
          maxLength={60}
          defaultValue={job.carrierReference}
        />
        <SubmitButton
          label="Correct the reference"
          consequence="Writes the right one to the customer."
          kind="second"
        />
      </ActionForm>
      <ActionForm
        action={takeBack.bind(null, job.number)}
        hidden={carriedFields(job.version)}
        label={label}
        summary={label}
      >
        <TextArea
          name="reason"
          label="Why it came back"
          hint="The customer reads it: what the carrier wrote on the parcel, or said."
          rows={2}
          maxLength={500}
        />
        <SubmitButton label={label} consequence={consequence} kind="second" />
      </ActionForm>
    </>
  );
}
