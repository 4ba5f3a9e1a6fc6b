import { ActionForm } from '@/app/ui/forms/action-form';
import { CheckboxGroup } from '@/app/ui/forms/choices';
import { FileField } from '@/app/ui/forms/file-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { formatDay } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import type { JobRecord } from '@/lib/jobs/records';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { showNumber } from '@/lib/numbers/job-number';
import { BY_HAND, type PromiseAnswer } from '@/lib/promise/rules/promise';
import type { OpenedParcel } from '../read-opened';
import { takeIn } from './actions';

type Props = {
  job: JobRecord;
  promise: PromiseAnswer;
  locale: string;
  /** the job that was opened for the parcel first; null where none was */
  opened: OpenedParcel | null;
};

export function TakeInForm({ job, promise, locale, opened }: Props) {
  const told = job.accessories.filter((each) => each.isTold);
  const came = cameBeside(opened, told);
  return (
    <ActionForm
      action={takeIn.bind(null, job.number)}
      hidden={{
        version: job.version,
        ...(opened && { opened: opened.number, openedVersion: opened.version }),
      }}
      label="Take it in"
    >
      <TextField
        name="serial"
        label="Serial, as read from the unit"
        hint="Read it from the unit itself, not from the slip. Only exactly the serial that was booked needs no settling."
        mono
        autoComplete="off"
        width="half"
        maxLength={60}
        scan
        defaultValue={opened?.arrivedSerial ?? undefined}
      />
      {told.length > 0 ? (
        <CheckboxGroup
          name="arrived"
          label="What is in the parcel"
          hint="Tick what you see. The customer is told of anything that is missing."
          optional
          defaultValues={came.told}
          choices={told.map((each) => ({ value: each.name, label: each.name }))}
        />
      ) : null}
      <TextArea
        name="extra"
        label={told.length > 0 ? 'What else came' : 'What came with the unit'}
        hint="One thing to a line, or with commas. It is kept with the unit."
        optional
        rows={3}
        maxLength={2000}
        defaultValue={came.beside.join('\n')}
      />
      <FileField
        name="serialPhoto"
        label="Photo of the serial"
        hint="It settles a serial that was misread."
        optional
        most={1}
        camera
      />
      <FileField
        name="photos"
        label="Photos of its condition"
        hint={
          opened
            ? 'Those that were taken when its job was opened come along by themselves.'
            : 'Every side, and any damage, before anything is opened. A phone offers its camera.'
        }
        optional
        most={MOST_PHOTOS}
      />
      <SubmitButton
        label="Take in"
        busy="Taking in…"
        consequence={`${opened ? `Ends job ${showNumber(opened.number)} without another word to the customer. ` : ''}Tells the customer that it is here, with any difference to the booking, and promises it ready by ${formatDay(promise.on, locale, 'weekday')}: ${basisWords(promise)}.`}
      />
    </ActionForm>
  );
}

/** What was written down of the parcel when its job was opened: what the booking told of, by its name there, and what came beside it. */
function cameBeside(opened: OpenedParcel | null, told: readonly { name: string }[]) {
  const came = opened?.accessories.filter(({ isArrived }) => isArrived === true) ?? [];
  const folded = (name: string) => name.trim().toLowerCase();
  const isTold = (name: string) => told.some((each) => folded(each.name) === folded(name));
  return {
    told: told
      .filter(({ name }) => came.some((each) => folded(each.name) === folded(name)))
      .map(({ name }) => name),
    beside: came.filter(({ name }) => !isTold(name)).map(({ name }) => name),
  };
}

/** What the promise rests on, for whoever gives it. */
function basisWords(promise: PromiseAnswer): string {
  const days = workingDaysWords(promise.days);
  switch (promise.basis) {
    case 'quoted':
      return `${days}, as the quote says`;
    case 'by-hand':
      return `${days}, ${BY_HAND}`;
    case 'repair':
      return `${days}, from ${promise.jobs} finished jobs of this repair`;
    case 'family':
      return `${days}, from ${promise.jobs} finished jobs of this family of units`;
    case 'all':
      return `${days}, from all ${promise.jobs} finished jobs`;
  }
}
