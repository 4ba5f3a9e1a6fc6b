import { ActionForm } from '@/app/ui/forms/action-form';
import { CountField } from '@/app/ui/forms/count-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { Table } from '@/app/ui/page/table';
import { lotsInStock } from '@/lib/bench/lots-in-stock';
import { putBackStages } from '@/lib/bench/rules/put-back';
import { type JobRecord, readStage } from '@/lib/jobs/records';
import { isRepaired } from '@/lib/jobs/rules/repaired';
import { formatMoney } from '@/lib/money/amount';
import { takePart } from './actions';
import { putBack } from './bench-actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';
import { PartsToComePart } from './parts-to-come-part';
import { RecalledPart } from './recalled-part';

type Props = Pick<SheetProps, 'job' | 'workshop'> & { isOpen: boolean; mayWork: boolean };
type PartUse = JobRecord['partUses'][number];

/** Parts the job took, by lot, each with its way back into stock; and the form that takes one. */
export async function PartsPart({ job, workshop, isOpen, mayWork }: Props) {
  const mayPutBack = mayWork && putBackStages(isRepaired(job.events)).includes(readStage(job.stage));
  const lots = isOpen ? await lotsInStock() : [];
  return (
    <div id="parts">
      <RecalledPart job={job} />
      {job.partUses.length > 0 ? (
        <Table
          caption="Parts fitted"
          columns={[
            { head: 'Part', kind: 'rowhead', cell: (use) => use.lot.part.name },
            { head: 'Lot', cell: (use) => use.lot.code },
            { head: 'Pieces', kind: 'number', cell: (use) => use.quantity },
            {
              head: 'Cost',
              kind: 'number',
              cell: (use) =>
                formatMoney(use.quantity * use.unitCostMinor, workshop.currency, workshop.locale),
            },
            ...(mayPutBack
              ? [
                  {
                    head: 'Put back',
                    kind: 'action' as const,
                    cell: (use: PartUse) => <PutBack job={job} use={use} />,
                  },
                ]
              : []),
          ]}
          rows={job.partUses}
          rowKey={(use) => use.id}
        />
      ) : null}
      {mayPutBack && job.partUses.length > 0 ? (
        <p className="text-small text-soft">
          Put back: all pieces of the line go back into stock, and this job no longer carries the lot. A piece
          that cannot be used again is then written off under its part.
        </p>
      ) : null}
      <PartsToComePart job={job} mayWork={mayWork} />
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
          <CountField name="quantity" label="Pieces" defaultValue="1" />
          <SubmitButton
            label="Take it from stock"
            consequence="Lowers the stock; the job carries the lot from now on."
          />
        </ActionForm>
      ) : null}
    </div>
  );
}

function PutBack({ job, use }: { job: JobRecord; use: PartUse }) {
  const which = `${use.lot.part.name}, lot ${use.lot.code}`;
  return (
    // A form asks for no width of its own, so the column would be too narrow for its button.
    <div className="w-28">
      <ActionForm
        action={putBack.bind(null, job.number)}
        hidden={{ ...carriedFields(job.version), use: use.id }}
        label={`Put back ${which}`}
      >
        <SubmitButton kind="second" label="Put back" about={which} />
      </ActionForm>
    </div>
  );
}
