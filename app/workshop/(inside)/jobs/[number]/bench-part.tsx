import { ActionForm } from '@/app/ui/forms/action-form';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { LinkButton } from '@/app/ui/page/button';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { Timeline } from '@/app/ui/page/timeline';
import { lotsInStock } from '@/lib/bench/lots-in-stock';
import { provingState } from '@/lib/bench/rules/checks';
import { minutesByPerson } from '@/lib/bench/rules/minutes-by';
import { formatInstant } from '@/lib/calendar/format';
import { reopenedAt } from '@/lib/jobs/reopened';
import { formatMoney } from '@/lib/money/amount';
import { addWork, takePart } from './actions';
import { carriedFields } from './carried-fields';
import { CautionsPart } from './cautions-part';
import type { SheetProps } from './open-sheet';
import { WiresPart } from './wires-part';

const AT_WORK = new Set(['assessing', 'awaiting-parts', 'on-bench']);

/** Work done, parts by lot, and where the check sheet stands. */
export async function BenchPart({ job, workshop, staff }: SheetProps) {
  const isOpen = AT_WORK.has(job.stage);
  const state = provingState(job.sheet.checks, job.checkEntries, reopenedAt(job.events));
  const minutes = job.work.reduce((sum, entry) => sum + entry.minutes, 0);
  const lots = isOpen ? await lotsInStock() : [];
  return (
    <section id="work" aria-labelledby="work-head">
      <h2 id="work-head">Bench</h2>
      {isOpen || job.stage === 'proving' ? <CautionsPart job={job} /> : null}
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
      {minutes > 0 ? <p>{`${minutes} minutes so far, ${job.repair.minutes} planned.`}</p> : null}
      {job.work.length > 0 ? (
        <Table
          caption="Minutes by person"
          keep
          rows={minutesByPerson(job.work)}
          rowKey={(row) => row.userId}
          columns={[
            {
              key: 'who',
              head: 'Person',
              kind: 'rowhead',
              cell: (row) => staff.get(row.userId)?.name ?? 'no longer here',
            },
            { key: 'entries', head: 'Entries', kind: 'number', cell: (row) => row.entries },
            { key: 'minutes', head: 'Minutes', kind: 'number', cell: (row) => row.minutes },
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
          <TextField name="minutes" label="Minutes" inputMode="numeric" width="short" unit="min" />
          <SubmitButton label="Record the work" consequence="Kept with your name. No mail." />
        </ActionForm>
      ) : null}
      <div id="parts">
        {job.partUses.length > 0 ? (
          <Table
            caption="Parts fitted"
            columns={[
              { key: 'part', head: 'Part', kind: 'rowhead', cell: (use) => use.lot.part.name },
              { key: 'lot', head: 'Lot', cell: (use) => use.lot.code },
              { key: 'quantity', head: 'Pieces', kind: 'number', cell: (use) => use.quantity },
              {
                key: 'cost',
                head: 'Cost',
                kind: 'number',
                cell: (use) =>
                  formatMoney(use.quantity * use.unitCostMinor, workshop.currency, workshop.locale),
              },
            ]}
            rows={job.partUses}
            rowKey={(use) => use.id}
          />
        ) : null}
        {isOpen ? (
          <ActionForm
            action={takePart.bind(null, job.number)}
            hidden={carriedFields(job.version)}
            label="Take a part"
            summary="Take a part"
          >
            <Select
              name="lot"
              label="Part and lot"
              empty="Choose the lot"
              choices={lots.map((lot) => ({
                value: lot.id,
                label: `${lot.part.name}, lot ${lot.code} (${lot.inStock} left)`,
              }))}
            />
            <TextField name="quantity" label="Pieces" inputMode="numeric" width="short" defaultValue="1" />
            <SubmitButton
              label="Take it from stock"
              consequence="Lowers the stock; the job carries the lot from now on."
            />
          </ActionForm>
        ) : null}
      </div>
      <WiresPart job={job} isOpen={isOpen} />
      <h3>Check sheet</h3>
      <p>
        {`Version ${job.sheet.version}: ${state.passed.length} of ${job.sheet.checks.length} passed`}
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
