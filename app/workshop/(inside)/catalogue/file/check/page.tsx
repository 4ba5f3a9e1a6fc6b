import type { Metadata, Route } from 'next';
import { redirect } from 'next/navigation';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { type DryRun, tryImport } from '@/lib/catalogue/import-list';
import { planLines } from '@/lib/catalogue/rules/plan-lines';
import { readUploadedList } from '@/lib/catalogue/uploaded-list';
import { attempt } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../../who';
import { importListAction } from '../actions';
import { AddedTable, ChangedTable, CountTable, FaultTable } from './plan-tables';

export const metadata: Metadata = { title: 'What this file would do' };

type Props = { searchParams: Promise<{ moved?: string }> };

export default async function CheckListPage({ searchParams }: Props) {
  const staff = await requireStaff(rolesThatMay('catalogue'));
  const { moved } = await searchParams;
  const text = await readUploadedList(staff.id);
  if (text === null) redirect('/workshop/catalogue/file' as Route);
  const outcome = await attempt(() => tryImport(text));
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href="/workshop/catalogue">Catalogue</TextLink> /{' '}
            <TextLink href="/workshop/catalogue/file">The catalogue as a file</TextLink>
          </>
        }
        title="What this file would do"
        lead={outcome.ok ? `${rowsText(outcome.value.rows)} read. Nothing is changed yet.` : undefined}
      >
        <LinkButton href="/workshop/catalogue/file" kind="quiet">
          Choose another file
        </LinkButton>
      </PageHead>
      {moved ? (
        <div className="mb-6">
          <Notice kind="warn" heading="Nothing was imported" role="status">
            <p>
              The catalogue or the file changed since you looked. This is what the file would do now; look at
              it again.
            </p>
          </Notice>
        </div>
      ) : null}
      {outcome.ok ? (
        <Plan run={outcome.value} />
      ) : (
        <Notice kind="stop" heading="This file cannot be imported">
          <p>{outcome.refusal.message}</p>
        </Notice>
      )}
    </>
  );
}

function Plan({ run }: { run: DryRun }) {
  const { plan, settings } = run;
  const lines = planLines(plan);
  const added = lines.filter((line) => line.isNew);
  const changed = lines.filter((line) => !line.isNew);
  return (
    <>
      <Verdict run={run} added={added.length} changed={changed.length} />
      <FaultTable problems={plan.problems} settings={settings} />
      <CountTable plan={plan} />
      <ChangedTable lines={changed} settings={settings} />
      <AddedTable lines={added} />
    </>
  );
}

function Verdict({ run, added, changed }: { run: DryRun; added: number; changed: number }) {
  const { problems } = run.plan;
  if (problems.length > 0) {
    const rows = new Set(problems.map((problem) => problem.row)).size;
    return (
      <Notice
        kind="stop"
        heading={`${countText(problems.length, 'fault')} in ${countText(rows, 'row')}: nothing can be imported`}
      >
        <p>Put them right in the file and choose it again. A file is imported whole or not at all.</p>
      </Notice>
    );
  }
  if (added + changed === 0) {
    return (
      <Notice kind="good" heading="Nothing to import">
        <p>The file says what the catalogue says already.</p>
      </Notice>
    );
  }
  return (
    <>
      <p className="mb-4 max-w-text">
        No fault was found. What the file does not name stays as it is, and no family, model or repair is
        deleted. An empty cell empties what it stands for. A new repair starts with a check sheet of one
        check.
      </p>
      <ActionForm action={importListAction} hidden={{ mark: run.mark }} label="Import this file">
        <SubmitButton
          label="Import this file"
          busy="Importing…"
          consequence={`Adds ${added} and changes ${changed}, all at once. Counts for bookings from now on; booked jobs keep their price.`}
        />
      </ActionForm>
    </>
  );
}

const rowsText = (rows: number) => countText(rows, 'row');

function countText(count: number, what: string): string {
  return `${count.toLocaleString('en-GB')} ${count === 1 ? what : `${what}s`}`;
}
