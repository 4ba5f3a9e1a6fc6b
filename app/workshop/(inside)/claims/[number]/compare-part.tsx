import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { checksOf } from '@/lib/bench/rules/job-sheets';
import { readCheck } from '@/lib/bench/stored-checks';
import type { JobRecord } from '@/lib/jobs/records';
import { showNumber } from '@/lib/numbers/job-number';
import type { RepairOfChain } from '@/lib/warranty/claim-desk-case';
import { beforeAndAfter, type Reading } from '@/lib/warranty/rules/before-and-after';
import { ComparePhotos } from './compare-photos';
import type { CaseProps } from './open-case';
import { Side } from './side';

type Props = CaseProps & { chosen: { before: string | null; after: string | null; repair: string | null } };

/** The repair and the returned unit side by side: photos, readings, findings, parts and hands. */
export function ComparePart({ found, workshop, names, chosen }: Props) {
  const { repair, job, repairs } = found;
  const shown = repairs.find((each) => each.jobNumber === repair.number);
  return (
    <section id="compare" aria-labelledby="compare-head">
      <h2 id="compare-head">Side by side</h2>
      {repairs.length > 1 ? <RepairChoice repairs={repairs} shown={repair.number} found={found} /> : null}
      <ComparePhotos repair={repair} returned={job} workshop={workshop} chosen={chosen} />
      <Readings repair={repair} returned={job} />
      <div className="mt-8 grid gap-x-12 gap-y-10 lg:grid-cols-2">
        <Side heading={repairWords(shown)} job={repair} workshop={workshop} names={names} />
        <Side heading="The returned unit" job={job} workshop={workshop} names={names} />
      </div>
    </section>
  );
}

function repairWords(repair: RepairOfChain | undefined): string {
  if (!repair?.claimNumber) return 'The first repair';
  return `The repair under claim ${showNumber(repair.claimNumber)}`;
}

function RepairChoice(props: {
  repairs: readonly RepairOfChain[];
  shown: string;
  found: CaseProps['found'];
}) {
  return (
    <nav aria-label="Repairs of this certificate">
      <ul className="flex flex-wrap gap-x-6">
        {props.repairs.map((repair) => {
          const words = `${repairWords(repair)}, revision ${repair.revision}`;
          const href =
            `/workshop/claims/${props.found.claim.number}?repair=${repair.jobNumber}#compare` as const;
          return (
            <li key={repair.jobNumber} className="py-2.5">
              {repair.jobNumber === props.shown ? (
                <strong aria-current="true">{words}</strong>
              ) : (
                <TextLink href={href}>{words}</TextLink>
              )}
            </li>
          );
        })}
      </ul>
    </nav>
  );
}

function Readings({ repair, returned }: { repair: JobRecord; returned: JobRecord }) {
  const rows = beforeAndAfter(sideOf(repair), sideOf(returned));
  return (
    <div className="mt-6">
      <Table
        caption="Readings at the repair and now"
        rows={rows}
        rowKey={(row) => row.label}
        empty="No check was recorded on either side."
        columns={[
          { head: 'Check', kind: 'rowhead', cell: (row) => row.label },
          { head: 'Limits', cell: (row) => row.limits || 'a tick' },
          { head: 'At the repair', cell: (row) => <ReadingText reading={row.before} /> },
          { head: 'Now', cell: (row) => <ReadingText reading={row.after} /> },
        ]}
      />
    </div>
  );
}

function ReadingText({ reading }: { reading: Reading | null }) {
  if (reading === null) return <span className="text-soft">not taken</span>;
  return <Tag tone={reading.isPassed ? 'good' : 'stop'}>{reading.text}</Tag>;
}

function sideOf(job: JobRecord) {
  return { checks: checksOf(job).map(readCheck), entries: job.checkEntries };
}
