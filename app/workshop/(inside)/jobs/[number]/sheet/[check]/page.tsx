import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { ConnectorBoard } from '@/app/ui/connector/connector-board';
import { ConnectorDrawing } from '@/app/ui/connector/connector-drawing';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { readTable } from '@/lib/bench/pin-table-records';
import { checksOf } from '@/lib/bench/rules/job-sheets';
import { readKeptProbes } from '@/lib/bench/rules/kept-probes';
import { showNumber } from '@/lib/numbers/job-number';
import { may } from '@/lib/people/rules/roles';
import { carriedFields } from '../../carried-fields';
import { CautionsPart } from '../../cautions-part';
import { openSheet } from '../../open-sheet';
import { enterConnector } from '../actions';
import { EntryList } from '../entry-list';

type Props = {
  params: Promise<{ number: string; check: string }>;
  searchParams: Promise<{ start?: string }>;
};

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  const { number, check } = await params;
  const { job } = await openSheet(number);
  const label = checksOf(job).find(({ id }) => id === check)?.label ?? 'Connector sheet';
  return { title: `${label}, ${showNumber(job.number)}` };
}

/** A connector at the bench: its pins drawn, every probe with its answer, one button for all. */
export default async function ConnectorSheetPage({ params, searchParams }: Props) {
  const { number, check: checkId } = await params;
  const { start } = await searchParams;
  const { job, workshop, staff, who } = await openSheet(number);
  const check = checksOf(job).find((each) => each.id === checkId && each.kind === 'connector');
  const table = check ? await readTable(check.pinTable) : null;
  if (!check || !table) nothingHere();
  const entries = job.checkEntries.filter((entry) => entry.checkId === check.id);
  const last = readKeptProbes(entries.at(-1)?.probes);
  const isOpen = job.stage === 'proving' && may(who.role, 'bench');
  const page = `/workshop/jobs/${job.number}/sheet` as const;
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href={`/workshop/jobs/${job.number}`}>{`Job ${showNumber(job.number)}`}</TextLink> /{' '}
            <TextLink href={page}>Check sheet</TextLink>
          </>
        }
        title={check.label}
        lead={check.help === '' ? undefined : check.help}
        next={
          isOpen
            ? 'it passes when every pin is through and every pair open. A pin that leads nowhere in a sound unit of this kind is told as no circuit here. One that was not reached does not pass; do it again when it was.'
            : 'probes can be entered while the job is at proving.'
        }
      />
      <CautionsPart job={job} />
      {table.note === '' ? null : <p className="mt-4 max-w-text">{table.note}</p>}
      {entries.length > 0 ? (
        <section aria-labelledby="entered" className="mt-8">
          <h2 id="entered">Entered so far</h2>
          <EntryList entries={entries} unit={null} workshop={workshop} staff={staff} />
          <ConnectorDrawing
            table={table}
            reads={Object.fromEntries(last.map((probe) => [probe.key, probe.read]))}
          />
        </section>
      ) : (
        isOpen || <ConnectorDrawing table={table} reads={{}} />
      )}
      {isOpen ? (
        <section aria-labelledby="enter" className="mt-8">
          <h2 id="enter">{entries.length > 0 ? 'Probe it again' : 'Probe it'}</h2>
          <p className="mb-4 max-w-text">
            Answer in the list, or tap pins and gaps on the drawing: once for right, again for wrong, again
            for not reached, once more for a pin without a circuit in this unit.{' '}
            {start === 'right' ? null : (
              <TextLink href={`${page}/${check.id}?start=right#enter`}>
                Begin with every probe marked right
              </TextLink>
            )}
          </p>
          <ActionForm
            action={enterConnector.bind(null, job.number, check.id)}
            hidden={carriedFields(job.version)}
            label={check.label}
          >
            <ConnectorBoard table={table} startsGood={start === 'right'} />
            <TextField name="note" label="Note" optional maxLength={500} />
            <SubmitButton
              label="Enter the connector sheet"
              consequence="Kept with your name. A failed one stays on the sheet, and on the certificate’s second page."
            />
          </ActionForm>
        </section>
      ) : null}
    </>
  );
}
