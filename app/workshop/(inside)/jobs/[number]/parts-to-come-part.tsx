import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NEEDED_STAGES, type PartToCome } from '@/lib/bench/rules/part-not-needed';
import { partsToComeOf } from '@/lib/bench/stored-parts-to-come';
import { type JobRecord, readStage } from '@/lib/jobs/records';
import { sayNeeded } from './bench-actions';
import { carriedFields } from './carried-fields';

/** Parts the job is counted on to take still, each with the way to say that it does not need it, and back; nothing where there is none. */
export function PartsToComePart({ job, mayWork }: { job: JobRecord; mayWork: boolean }) {
  const parts = NEEDED_STAGES.includes(readStage(job.stage)) ? partsToComeOf(job) : [];
  if (parts.length === 0) return null;
  return (
    <>
      <Table
        caption="Parts to come"
        columns={[
          {
            head: 'Part',
            kind: 'rowhead',
            cell: ({ partId, name }) => <TextLink href={`/workshop/parts/${partId}`}>{name}</TextLink>,
          },
          {
            head: 'Pieces',
            kind: 'number',
            cell: ({ quantity, isNeeded }) => (isNeeded ? quantity : 'not needed'),
          },
          ...(mayWork
            ? [
                {
                  head: 'Change',
                  kind: 'action' as const,
                  cell: (part: PartToCome) => <Say job={job} part={part} />,
                },
              ]
            : []),
        ]}
        rows={parts}
        rowKey={({ partId }) => partId}
      />
      {mayWork ? (
        <p className="text-small text-soft">
          What the repair usually takes, with each that is proved beside it, and what the job waits for. A
          part that is not needed is not ordered for this job, and the next job that waits for it has its
          turn. The customer is not written to. A yes to a later price with a part in it counts them all
          again.
        </p>
      ) : null}
    </>
  );
}

function Say({ job, part: { partId, name, isNeeded } }: { job: JobRecord; part: PartToCome }) {
  const label = isNeeded ? 'Not needed' : 'Needed after all';
  return (
    // A form asks for no width of its own, so the column would be too narrow for its button.
    <div className="w-28">
      <ActionForm
        action={sayNeeded.bind(null, job.number)}
        hidden={{ ...carriedFields(job.version), part: partId, needed: isNeeded ? 'no' : 'yes' }}
        label={`${label}: ${name}`}
      >
        <SubmitButton kind="second" label={label} about={name} />
      </ActionForm>
    </div>
  );
}
