import { ActionForm } from '@/app/ui/forms/action-form';
import { CountField } from '@/app/ui/forms/count-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { listParts } from '@/lib/bench/part-records';
import { partsShort } from '@/lib/bench/stored-parts-to-come';
import { compareDays, type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import type { JobRecord } from '@/lib/jobs/records';
import { type AwaitedPart, awaitedWords, isHere, partsWait } from '@/lib/jobs/rules/awaited-parts';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { moveOf } from '@/lib/jobs/rules/stages';
import { awaitedPartsOf } from '@/lib/jobs/stored-awaited-parts';
import { may, type Role } from '@/lib/people/rules/roles';
import type { WorkshopCard } from '@/lib/workshop/card';
import { awaitParts } from './bench-actions';
import { carriedFields } from './carried-fields';

type Props = { job: JobRecord; workshop: WorkshopCard; role: Role; isOpen: boolean };

/** The form that says for which parts a job waits and until when, of one that may wait or waits already. */
export async function WaitPart({ job, workshop, role, isOpen }: Props) {
  const move = moveOf('wait-for-parts');
  const waits = job.stage === move.to;
  if ((!waits && !isOpen) || !may(role, permissionOf('wait-for-parts'))) return null;
  const typed = job.awaitedParts.find(({ expectedOn }) => expectedOn !== null)?.expectedOn;
  const typedOn = waits && typed ? dayFromDate(typed) : null;
  const isPast = typedOn !== null && compareDays(typedOn, dayInZone(now(), workshop.timeZone)) < 0;
  const parts = await listParts();
  const label = waits ? 'Change what it waits for' : move.label;
  return (
    <ActionForm
      action={awaitParts.bind(null, job.number)}
      hidden={carriedFields(job.version)}
      label={label}
      summary={label}
    >
      <WaitFields
        known={waits ? awaitedPartsOf(job).filter(({ quantity }) => quantity > 0) : partsShort(job, parts)}
        expectedOn={isPast ? null : typedOn}
        parts={parts}
      />
      <SubmitButton
        label={waits ? 'Keep this' : move.label}
        kind="second"
        consequence={waits ? 'The customer’s page and Today go by it. No mail.' : move.consequence}
      />
    </ActionForm>
  );
}

/** For which parts a job waits, each with what is known of its coming; nothing of one that does not wait. */
export function AwaitedList({ job, workshop }: Pick<Props, 'job' | 'workshop'>) {
  const awaited = awaitedPartsOf(job);
  const today = dayInZone(now(), workshop.timeZone);
  const wait = partsWait(awaited, today);
  if (!wait) return null;
  const promised = job.promisedOn && dayFromDate(job.promisedOn);
  const isAfter = wait.expectedOn && promised && compareDays(wait.expectedOn, promised) > 0;
  return (
    <>
      <p>Waits for</p>
      <ul>
        {awaited.map((part) => (
          <li key={`${part.partId} ${part.name}`}>
            {awaitedWords(part, { today, locale: workshop.locale })}
            {part.partId && part.isNeeded ? (
              <>
                {'. '}
                <TextLink href={`/workshop/parts/${part.partId}`}>
                  {isHere(part) ? 'Its lots' : part.isOnOrder ? 'Its order' : 'The part'}
                </TextLink>
              </>
            ) : null}
          </li>
        ))}
      </ul>
      {isAfter && promised && wait.expectedOn ? (
        <Notice kind="warn" heading="The part comes after the promise">
          <p>
            {`It is expected ${formatDay(wait.expectedOn, workshop.locale, 'weekday')}, and the unit was promised for ${formatDay(promised, workshop.locale, 'weekday')}. `}
            <TextLink href="#promise">Move the promise</TextLink>, so that the customer hears of it in time.
          </p>
        </Notice>
      ) : null}
    </>
  );
}

type Known = Pick<AwaitedPart, 'partId' | 'name' | 'quantity'>;

type Listed = Awaited<ReturnType<typeof listParts>>;

/** Rows for parts of the list; few repairs wait for more. */
const ROWS = [1, 2, 3] as const;

function WaitFields(props: { known: readonly Known[]; expectedOn: Day | null; parts: Listed }) {
  const { known, expectedOn, parts } = props;
  const listed = known.filter(({ partId }) => partId !== null);
  const other = known.find(({ partId }) => partId === null);
  return (
    <>
      {ROWS.map((row) => {
        const part = listed[row - 1];
        return (
          <div key={row} className="flex flex-wrap gap-x-4">
            <Select
              name={`part-${row}`}
              label={row === 1 ? 'Part' : `Part ${row}`}
              optional={row > 1}
              empty="None"
              defaultValue={part?.partId ?? undefined}
              choices={parts.map(({ id, name, inStock, onOrder }) => ({
                value: id,
                label: `${name} (${inStock} in stock${onOrder > 0 ? `, ${onOrder} on order` : ''})`,
              }))}
            />
            <CountField
              name={`pieces-${row}`}
              label={row === 1 ? 'Pieces' : `Pieces of part ${row}`}
              defaultValue={part?.quantity ?? 1}
            />
          </div>
        );
      })}
      <TextField
        name="other"
        label="A part that is not on the list"
        optional
        maxLength={120}
        defaultValue={other?.name}
      />
      <TextField
        name="expectedOn"
        label="Expected on"
        type="date"
        width="half"
        optional
        defaultValue={expectedOn ?? undefined}
        hint="The day of an open order that has enough for it goes before it."
      />
    </>
  );
}
