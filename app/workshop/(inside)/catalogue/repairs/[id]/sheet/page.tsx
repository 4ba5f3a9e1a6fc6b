import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { SOLDER_FILLS } from '@/lib/bench/rules/solder-fill';
import { formatInstant } from '@/lib/calendar/format';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { readRepair, type SheetVersion } from '@/lib/catalogue/staff-records';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../../../who';
import { SavedNote } from '../../../saved-note';
import { addCheckAction, addReadyChecksAction } from './actions';
import { CheckFields } from './check-fields';
import { CheckList } from './check-list';
import { connectorChoices } from './connector-choices';
import { MainsPart } from './mains-part';
import { MoveForm } from './move-form';

const readOnce = cache(readRepair);

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ saved?: string }> };

const OTHER_SETS = [
  ...SOLDER_FILLS.map(({ key, label }) => ({
    value: key,
    label: `Solder fill of through-hole anchors, ${label}`,
    group: 'Solder, by the IPC class you work to',
  })),
  {
    value: 'mains-1',
    label: 'Mains equipment with protective conductor (class I)',
    group: 'Electrical safety',
  },
  { value: 'mains-2', label: 'Mains equipment, double insulated (class II)', group: 'Electrical safety' },
];

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff();
  const found = await readOnce((await params).id);
  return { title: found ? `Check sheet of ${found.name}, ${found.model.name}` : 'Not found' };
}

export default async function SheetPage({ params, searchParams }: Props) {
  const staff = await requireStaff();
  const { id } = await params;
  const { saved } = await searchParams;
  const [repair, workshop, connectors] = await Promise.all([
    readOnce(id),
    readWorkshop(),
    connectorChoices(),
  ]);
  if (!repair) nothingHere();
  const [newest, ...older] = repair.sheets;
  const version = newest?.version ?? 0;
  const mayChange = may(staff.role, 'catalogue');
  const since = (at: Date) => formatInstant(at, { locale: workshop.locale, zone: workshop.timeZone });
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href={`/workshop/catalogue/models/${repair.model.id}`}>
              {unitName(repair.model)}
            </TextLink>{' '}
            / <TextLink href={`/workshop/catalogue/repairs/${id}`}>{repair.name}</TextLink>
          </>
        }
        title="Check sheet"
        lead={
          newest
            ? `Version ${version}, since ${since(newest.createdAt)}. ${jobsText(newest.jobs)}`
            : 'None yet.'
        }
        next="every change makes the next version. Jobs already booked are proved on the version they were booked under, until the owner puts one on the newest from its own check sheet."
      />
      <SavedNote saved={saved}>{`This is version ${version}.`}</SavedNote>
      <CheckList
        checks={newest?.checks ?? []}
        actions={
          mayChange ? (check) => <MoveForm repairId={id} version={version} check={check} /> : undefined
        }
      />
      {mayChange ? (
        <>
          {repair.model.isMainsPowered ? (
            <MainsPart repairId={id} version={version} checks={newest?.checks ?? []} />
          ) : null}
          <section aria-labelledby="add" className="mt-12">
            <h2 id="add" className="mb-3">
              Add a check
            </h2>
            <ActionForm action={addCheckAction.bind(null, id, version)} label="Add a check">
              <CheckFields connectors={connectors} />
              <SubmitButton
                label="Add the check"
                busy="Adding…"
                consequence={`Makes version ${version + 1}.`}
              />
            </ActionForm>
          </section>
          <section aria-labelledby="ready" className="mt-12">
            <h2 id="ready" className="mb-3">
              Add a ready-made set
            </h2>
            <ActionForm action={addReadyChecksAction.bind(null, id, version)} label="Add a ready-made set">
              <Select
                name="ready"
                label="Set"
                hint="A connector brings its connector sheet and its worst contact. The limits for mains equipment are a template from memory: only a competent person may sign them, and the standard in force comes first."
                width="half"
                empty="Choose a set"
                choices={[...connectors, ...OTHER_SETS]}
              />
              <p>
                <TextLink href="/workshop/catalogue/pin-tables">
                  Pin tables, and how to add one of our own
                </TextLink>
              </p>
              <SubmitButton
                kind="second"
                label="Add the set"
                busy="Adding…"
                consequence={`Makes version ${version + 1}.`}
              />
            </ActionForm>
          </section>
        </>
      ) : null}
      <OlderVersions sheets={older} since={since} />
    </>
  );
}

function OlderVersions({ sheets, since }: { sheets: readonly SheetVersion[]; since: (at: Date) => string }) {
  if (sheets.length === 0) return null;
  return (
    <section aria-labelledby="older" className="mt-12">
      <h2 id="older" className="mb-3">
        Older versions
      </h2>
      {sheets.map((sheet) => (
        <details key={sheet.id} className="border-b border-rule">
          <summary className="py-3">
            Version {sheet.version}, since {since(sheet.createdAt)}. {jobsText(sheet.jobs)}
          </summary>
          <CheckList checks={sheet.checks} />
        </details>
      ))}
    </section>
  );
}

function jobsText(jobs: number): string {
  if (jobs === 0) return 'No job is proved on it.';
  return jobs === 1 ? 'One job is proved on it.' : `${jobs} jobs are proved on it.`;
}
