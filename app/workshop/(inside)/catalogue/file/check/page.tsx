import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { type DryRun, tryImport } from '@/lib/catalogue/import-file';
import type { FileKind } from '@/lib/catalogue/rules/file-kinds';
import { changeCounts, FILE_WORDS, type FileLook, lookOf } from '@/lib/catalogue/rules/file-look';
import { readUploadedList } from '@/lib/catalogue/uploaded-list';
import { attempt } from '@/lib/outcome';
import { requireStaff } from '../../../../who';
import { importListAction } from '../actions';
import { AddedTable, ChangedTable, CountTable, FaultTable, OffTable } from './plan-tables';

export const metadata: Metadata = { title: 'What this file would do' };

type Props = { searchParams: Promise<{ moved?: string }> };

export default async function CheckListPage({ searchParams }: Props) {
  const staff = await requireStaff('catalogue');
  const { moved } = await searchParams;
  const text = await readUploadedList(staff.id);
  if (text === null) redirect('/workshop/catalogue/file');
  const outcome = await attempt(() => tryImport(text));
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href="/workshop/catalogue">Catalogue</TextLink> /{' '}
            <TextLink href="/workshop/catalogue/file">The catalogue as files</TextLink>
          </>
        }
        title="What this file would do"
        lead={outcome.ok ? readText(outcome.value) : undefined}
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

// What stays as it is and what does not, since a file of one kind leaves alone what one of another empties.
const STAYS: Record<FileKind, string> = {
  catalogue:
    'What the file does not name stays as it is, and no family, model or repair is deleted. An empty cell empties what it stands for. A new repair starts with a check sheet of one check.',
  checks:
    'A repair that the file does not name keeps its sheet. A check that is left out of the rows of its repair is taken off.',
  policies: 'A policy that the file does not name stays as it is, and none is deleted.',
};

const COUNTS_FOR: Record<FileKind, string> = {
  catalogue: 'Counts for bookings from now on; booked jobs keep their price.',
  checks:
    'Each changed sheet gets its next version, for bookings from now on; jobs that are booked keep theirs until you put one on the newest.',
  policies:
    'Changed terms are the next version of their policy. What is booked and certificates that are out keep theirs.',
};

function Plan({ run }: { run: DryRun }) {
  const look = lookOf(run, run.settings);
  return (
    <>
      <Verdict run={run} look={look} />
      <FaultTable faults={look.faults} />
      <CountTable counts={look.counts} faults={look.faults} />
      <OffTable lines={look.lines} />
      <ChangedTable lines={look.lines} />
      <AddedTable lines={look.lines} />
    </>
  );
}

function Verdict({ run, look }: { run: DryRun; look: FileLook }) {
  const { faults } = look;
  const { added, changed } = changeCounts(look);
  if (faults.length > 0) {
    const rows = new Set(faults.map((fault) => fault.row)).size;
    return (
      <Notice
        kind="stop"
        heading={`${countText(faults.length, 'fault')} in ${countText(rows, 'row')}: nothing can be imported`}
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
      <p className="mb-4 max-w-text">{`No fault was found. ${STAYS[run.kind]}`}</p>
      <ActionForm action={importListAction} hidden={{ mark: run.mark }} label="Import this file">
        <SubmitButton
          label="Import this file"
          busy="Importing…"
          consequence={`Adds ${added} and changes ${changed}, all at once. ${COUNTS_FOR[run.kind]}`}
        />
      </ActionForm>
    </>
  );
}

function readText({ kind, rows }: DryRun): string {
  return `A file of ${FILE_WORDS[kind]}, ${countText(rows, 'row')} read. Nothing is changed yet.`;
}

function countText(count: number, what: string): string {
  return `${count.toLocaleString('en-GB')} ${count === 1 ? what : `${what}s`}`;
}
