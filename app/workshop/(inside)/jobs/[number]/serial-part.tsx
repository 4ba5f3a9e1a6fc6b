import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Notice } from '@/app/ui/page/notice';
import { moveOf } from '@/lib/jobs/rules/stages';
import { settle } from './actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';

/** A serial that is not simply the same waits here for a person who has looked at the unit. */
export function SerialPart({ job }: SheetProps) {
  if (job.arrivedSerial === null || job.isSerialSettled) return null;
  const isClose = job.serialComparison === 'likely-misread';
  const expected = job.kind === 'claim' ? 'certificate' : 'booking';
  return (
    <Notice kind="warn" heading={isClose ? 'The serial looks misread' : 'The serial is another one'}>
      <p>
        {isClose
          ? `It differs from the ${expected} only by characters that are easily mixed up. Look at the unit, add a photo of the serial, and settle it.`
          : `This may be another unit than the ${expected} is for. Look at it, ask the customer if need be, add a photo of the serial, and settle it.`}
      </p>
      {isClose || job.stage !== 'arrived' ? null : (
        <p>
          {'Was another customer’s parcel taken in here? '}
          <a href="#moves">{`“${moveOf('undo-arrival').label}”`}</a>
          {' takes that back.'}
        </p>
      )}
      <ActionForm
        action={settle.bind(null, job.number)}
        hidden={carriedFields(job.version)}
        label="Settle the serial"
      >
        <TextField
          name="serial"
          label="The serial this unit carries"
          mono
          autoComplete="off"
          maxLength={60}
          defaultValue={job.arrivedSerial}
        />
        <TextField name="note" label="How it was settled" optional maxLength={500} />
        <SubmitButton
          label="Settle the serial"
          consequence="The job and its certificate carry this serial. Needs a photo of the serial, under Photos."
        />
      </ActionForm>
    </Notice>
  );
}
