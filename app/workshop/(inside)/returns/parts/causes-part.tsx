import { Table } from '@/app/ui/page/table';
import type { Tally } from '@/lib/returns/tallies';
import { causeRow } from '@/lib/warranty/rules/causes';

const IN_DOUBT = 'Another cause, ruled for the owner because the evidence was not clear';

/** What the units that came back were found to fail of. */
export function CausesPart({ causes }: { causes: Tally['causes'] }) {
  const rows = [
    { label: causeRow('workmanship').label, units: causes.workmanship },
    { label: causeRow('fitted-part').label, units: causes.part },
    { label: causeRow('weakened-by-original-damage').label, units: causes.firstDamage },
    { label: IN_DOUBT, units: causes.inDoubt },
  ].filter(({ units }) => units > 0);
  return (
    <section aria-labelledby="causes">
      <h2 id="causes">Why they came back</h2>
      <Table
        keep
        captionHidden
        caption="Causes of the first return of each unit"
        rows={rows}
        rowKey={({ label }) => label}
        empty="Nothing came back."
        columns={[
          { head: 'Cause', kind: 'rowhead', cell: ({ label }) => label },
          { head: 'Units', kind: 'number', cell: ({ units }) => units },
        ]}
      />
    </section>
  );
}
