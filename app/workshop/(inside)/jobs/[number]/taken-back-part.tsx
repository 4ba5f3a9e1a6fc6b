import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { Select } from '@/app/ui/forms/select';
import { TextArea } from '@/app/ui/forms/text-area';
import { Timeline } from '@/app/ui/page/timeline';
import type { Staff } from '@/app/workshop/who';
import { formatInstant } from '@/lib/calendar/format';
import type { JobRecord } from '@/lib/jobs/records';
import { type EntryKind, mayTakeBack } from '@/lib/jobs/rules/take-back';
import { takeBackFacts } from '@/lib/jobs/take-back-entry';
import { takenBackOf } from '@/lib/jobs/taken-back';
import { takeBackRecorded } from './bench-actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';

/** What was recorded by mistake: taken back here, and what was taken back, for staff alone. A photo is taken back on its own page. */
export async function TakenBackPart({ job, workshop, staff, who }: SheetProps & { who: Staff }) {
  const entries = entriesFor(job, who);
  const before = await takenBackOf(job.id);
  if (entries.length === 0 && before.length === 0) return null;
  return (
    <section id="taken-back" aria-labelledby="taken-back-head">
      <h2 id="taken-back-head">Recorded by mistake</h2>
      {before.length > 0 ? (
        <Timeline
          label="Taken back"
          entries={before.map((each) => ({
            key: each.id,
            dateTime: each.at.toISOString(),
            on: formatInstant(each.at, { locale: workshop.locale, zone: workshop.timeZone }),
            who: each.userId === null ? undefined : staff.get(each.userId)?.name,
            what: each.why,
            detail: each.said === '' ? undefined : <s className="written">{each.said}</s>,
          }))}
        />
      ) : null}
      {entries.length > 0 ? (
        <ActionForm
          action={takeBackRecorded.bind(null, job.number)}
          hidden={carriedFields(job.version)}
          label="Take something back"
          summary="Take something back"
        >
          <Select name="entry" label="What was recorded by mistake?" empty="Choose one" choices={entries} />
          <TakeBackFields what="It counts no more, and leaves the customer’s page and the certificate. A finding’s photos go for good. To correct it, record it again." />
        </ActionForm>
      ) : null}
    </section>
  );
}

/** The reason, and the button that is asked once. */
export function TakeBackFields({ what }: { what: string }) {
  return (
    <>
      <TextArea
        name="reason"
        label="Why"
        hint="For the history. Name nobody in it."
        rows={2}
        maxLength={500}
      />
      <ConfirmButton
        label="Take it back"
        question="Take it back?"
        confirm="Yes, take it back"
        consequence={`${what} No mail.`}
      />
    </>
  );
}

/** Whether a person may take back an entry of a job now. */
export function mayTake(job: JobRecord, what: EntryKind, id: string, who: Staff): boolean {
  const facts = takeBackFacts(job, { what, id }, { id: who.id, isOwner: who.role === 'owner' });
  return facts !== null && mayTakeBack(facts).allowed;
}

const MOST_LETTERS = 60;
const short = (text: string) => (text.length > MOST_LETTERS ? `${text.slice(0, MOST_LETTERS)}…` : text);

function entriesFor(job: JobRecord, who: Staff) {
  const all = [
    ...job.findings.map(
      ({ id, text }) => ({ what: 'finding', id, label: short(text), group: 'Findings' }) as const,
    ),
    ...job.work.map(
      ({ id, text, minutes }) =>
        ({ what: 'work', id, label: `${short(text)} (${minutes} min)`, group: 'Work' }) as const,
    ),
    ...job.jumperWires.map(
      ({ id, fromPoint, toPoint, milliohms }) =>
        ({
          what: 'wire',
          id,
          label: `${fromPoint} to ${toPoint}, ${milliohms} mΩ`,
          group: 'Jumper wires',
        }) as const,
    ),
  ];
  return all
    .filter(({ what, id }) => mayTake(job, what, id, who))
    .map(({ what, id, label, group }) => ({ value: `${what}:${id}`, label, group }));
}
