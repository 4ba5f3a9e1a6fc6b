import { ActionForm } from '@/app/ui/forms/action-form';
import { FileField } from '@/app/ui/forms/file-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { LinkButton } from '@/app/ui/page/button';
import { Timeline } from '@/app/ui/page/timeline';
import { PhotoStrip } from '@/app/ui/photos/photo';
import type { Staff } from '@/app/workshop/who';
import { formatInstant } from '@/lib/calendar/format';
import { readStage } from '@/lib/jobs/records';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { NOT_WITH_US } from '@/lib/jobs/rules/stage-sets';
import { moveOf } from '@/lib/jobs/rules/stages';
import { may } from '@/lib/people/rules/roles';
import { addFinding } from './actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';
import { staffPhotos } from './staff-photos';

/** What was found, each entry with its photos. */
export function FindingsList({ job, workshop, staff }: SheetProps) {
  return (
    <Timeline
      label="Findings"
      entries={job.findings.map((finding) => ({
        key: finding.id,
        dateTime: finding.at.toISOString(),
        on: formatInstant(finding.at, { locale: workshop.locale, zone: workshop.timeZone }),
        who: staff.get(finding.userId)?.name,
        what: <span className="written">{finding.text}</span>,
        detail: (
          <PhotoStrip
            label="Photos of this finding"
            photos={staffPhotos(job, (photo) => photo.findingId === finding.id)}
          />
        ),
      }))}
    />
  );
}

export function FindingsPart({ job, workshop, staff, who }: SheetProps & { who: Staff }) {
  const isOpen = !NOT_WITH_US.includes(readStage(job.stage));
  const mayOffer = moveOf('ask-approval').from.includes(readStage(job.stage)) && may(who.role, 'money');
  if (!isOpen && job.findings.length === 0) return null;
  return (
    <section id="findings" aria-labelledby="findings-head">
      <h2 id="findings-head">Findings</h2>
      {job.findings.length > 0 ? (
        <FindingsList job={job} workshop={workshop} staff={staff} />
      ) : (
        <p>Nothing recorded yet.</p>
      )}
      {isOpen && may(who.role, 'bench') ? (
        <ActionForm
          action={addFinding.bind(null, job.number)}
          hidden={carriedFields(job.version)}
          label="Add a finding"
          summary="Add a finding"
          isOpen={job.stage === 'assessing' && job.findings.length === 0}
        >
          <TextArea
            name="text"
            label="What did you find?"
            hint="The customer reads this with a changed price."
            maxLength={4000}
            rows={3}
          />
          <FileField name="photos" label="Photos" most={MOST_PHOTOS} camera optional />
          <SubmitButton
            label="Record the finding"
            consequence="The customer sees it on the private page. No mail."
          />
        </ActionForm>
      ) : null}
      {mayOffer ? (
        <p>
          <LinkButton href={`/workshop/jobs/${job.number}/price`} kind="second">
            Write a changed price
          </LinkButton>
        </p>
      ) : null}
    </section>
  );
}
