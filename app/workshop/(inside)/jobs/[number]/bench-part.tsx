import { ActionForm } from '@/app/ui/forms/action-form';
import { CountField } from '@/app/ui/forms/count-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { LinkButton } from '@/app/ui/page/button';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { Timeline } from '@/app/ui/page/timeline';
import type { Staff } from '@/app/workshop/who';
import { provingState } from '@/lib/bench/rules/checks';
import { checksOf, plannedMinutes, provedSheets, sheetNames } from '@/lib/bench/rules/job-sheets';
import { minutesByPerson, minutesOf } from '@/lib/bench/rules/minutes-by';
import { formatInstant } from '@/lib/calendar/format';
import { readStage } from '@/lib/jobs/records';
import { countsFrom } from '@/lib/jobs/rules/reopened';
import { WORK_STAGES } from '@/lib/jobs/rules/stage-sets';
import { may } from '@/lib/people/rules/roles';
import { addWork } from './actions';
import { carriedFields } from './carried-fields';
import { CautionsPart } from './cautions-part';
import type { SheetProps } from './open-sheet';
import { PartsPart } from './parts-part';
import { WiresPart } from './wires-part';

/** Work done, parts by lot, and where the check sheet stands. */
export function BenchPart({ job, workshop, staff, who }: SheetProps & { who: Staff }) {
  const isWorkedOn = WORK_STAGES.includes(readStage(job.stage));
  const mayWork = may(who.role, 'bench');
  const isOpen = isWorkedOn && mayWork;
  const sheets = provedSheets(job);
  const state = provingState(checksOf(job), job.checkEntries, countsFrom(job.events));
  const minutes = minutesOf(job.work);
  return (
    <section id="work" aria-labelledby="work-head">
      <h2 id="work-head">Bench</h2>
      {isWorkedOn || job.stage === 'proving' ? <CautionsPart job={job} /> : null}
      {job.work.length > 0 ? (
        <Timeline
          label="Work done"
          entries={job.work.map((entry) => ({
            key: entry.id,
            dateTime: entry.at.toISOString(),
            on: formatInstant(entry.at, { locale: workshop.locale, zone: workshop.timeZone }),
            who: staff.get(entry.userId)?.name,
            what: `${entry.text} (${entry.minutes} min)`,
          }))}
        />
      ) : (
        <p>No work recorded yet.</p>
      )}
      {minutes > 0 ? <p>{`${minutes} minutes so far, ${plannedMinutes(job)} planned.`}</p> : null}
      {job.work.length > 0 ? (
        <Table
          caption="Minutes by person"
          keep
          rows={minutesByPerson(job.work)}
          rowKey={(row) => row.userId}
          columns={[
            {
              head: 'Person',
              kind: 'rowhead',
              cell: (row) => staff.get(row.userId)?.name ?? 'no longer here',
            },
            { head: 'Entries', kind: 'number', cell: (row) => row.entries },
            { head: 'Minutes', kind: 'number', cell: (row) => row.minutes },
          ]}
        />
      ) : null}
      {isOpen ? (
        <ActionForm
          action={addWork.bind(null, job.number)}
          hidden={carriedFields(job.version)}
          label="Add work"
          summary="Add work"
          isOpen={job.stage === 'on-bench'}
        >
          <TextArea
            name="text"
            label="What was done?"
            hint="It is printed on the certificate."
            maxLength={4000}
            rows={3}
          />
          <CountField name="minutes" label="Minutes" unit="min" />
          <SubmitButton label="Record the work" consequence="Kept with your name. No mail." />
        </ActionForm>
      ) : null}
      <PartsPart job={job} workshop={workshop} isOpen={isOpen} mayWork={mayWork} />
      <WiresPart job={job} isOpen={isOpen} />
      <h3>Check sheet</h3>
      <p>
        {`${sheets.length > 1 ? sheetNames(sheets) : `Version ${job.sheet.version}`}: ${state.passed.length} of ${checksOf(job).length} passed`}
        {state.failed.length > 0 ? `, ${state.failed.length} failed` : ''}.{' '}
        {state.isProved ? <Tag tone="good">proved</Tag> : <Tag tone="waiting">not proved yet</Tag>}
      </p>
      <p>
        <LinkButton
          href={`/workshop/jobs/${job.number}/sheet`}
          kind={job.stage === 'proving' ? 'main' : 'second'}
        >
          Open the check sheet
        </LinkButton>
      </p>
    </section>
  );
}
