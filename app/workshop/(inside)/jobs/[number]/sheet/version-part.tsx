import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { Notice } from '@/app/ui/page/notice';
import { sheetsOf } from '@/lib/bench/rules/job-sheets';
import { earlierEntries, newestSheetOf } from '@/lib/bench/sheet-records';
import { readStage } from '@/lib/jobs/records';
import { mayTakeNewestSheet } from '@/lib/jobs/rules/guards';
import { may, type Role } from '@/lib/people/rules/roles';
import { carriedFields } from '../carried-fields';
import type { SheetProps } from '../open-sheet';
import { takeNewest } from './actions';
import { EntryList } from './entry-list';

/** A newer version of the sheet, and how the job goes over to it; nothing where there is none, or the job is at another stage. */
export async function NewerVersion({ job, role }: { job: SheetProps['job']; role: Role }) {
  const newest = await newestSheetOf(job.repair.id);
  const { version } = job.sheet;
  const to = newest?.version ?? version;
  if (!mayTakeNewestSheet({ stage: readStage(job.stage), version, newest: to }).allowed) return null;
  return (
    <div id="version">
      <Notice kind="note" heading={`The sheet of this repair is at version ${to}`}>
        <p>
          This job is proved on version {version}.{' '}
          {`Where that one is wrong, ${may(role, 'catalogue') ? '' : 'the owner can '}put the job on the newer one.`}
        </p>
      </Notice>
      {may(role, 'catalogue') ? (
        <ActionForm
          action={takeNewest.bind(null, job.number)}
          hidden={{ ...carriedFields(job.version), sheet: to }}
          label={`Prove it on version ${to}`}
        >
          <ConfirmButton
            label={`Prove it on version ${to}`}
            question={`Put this job on version ${to}?`}
            confirm={`Yes, put it on version ${to}`}
            consequence={`Every check of version ${to} is entered anew. What was entered on version ${version} stays with the job, and is not on the certificate. No mail.`}
          />
        </ActionForm>
      ) : null}
    </div>
  );
}

/** What was entered before the job went over to this version, or to this repair, check by check. */
export async function EarlierEntries({ job, workshop, staff }: SheetProps) {
  const onSheet = new Set(
    sheetsOf(job)
      .flatMap(({ checks }) => checks)
      .map((check) => check.id),
  );
  if (job.checkEntries.every((entry) => onSheet.has(entry.checkId))) return null;
  const entries = await earlierEntries(job);
  const checks = new Map(entries.map(({ check }) => [check.id, check]));
  return (
    <section aria-labelledby="earlier" className="mt-12">
      <h2 id="earlier">Entered on an earlier sheet</h2>
      <p>It counts no more, and is not on the certificate.</p>
      {[...checks.values()].map((check) => (
        <div key={check.id}>
          <h3>
            {[
              check.label,
              ...(check.sheet.repair.name === job.repair.name ? [] : [check.sheet.repair.name]),
              `version ${check.sheet.version}`,
            ].join(', ')}
          </h3>
          <EntryList
            entries={entries.filter((entry) => entry.checkId === check.id)}
            unit={check.unit}
            workshop={workshop}
            staff={staff}
          />
        </div>
      ))}
    </section>
  );
}
