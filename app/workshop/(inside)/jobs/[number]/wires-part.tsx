import { ActionForm } from '@/app/ui/forms/action-form';
import { CountField } from '@/app/ui/forms/count-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { USUAL_JUMPER_MM } from '@/lib/bench/rules/jumper-wire';
import { wireSentence, wireVerdict } from '@/lib/bench/rules/wire-verdict';
import type { JobRecord } from '@/lib/jobs/records';
import { addWire } from './bench-actions';
import { carriedFields } from './carried-fields';

type Wire = JobRecord['jumperWires'][number];

/** Wires laid in the place of broken traces, each reading beside what its copper should read. */
export function WiresPart({ job, isOpen }: { job: JobRecord; isOpen: boolean }) {
  if (!isOpen && job.jumperWires.length === 0) return null;
  return (
    <div id="wires">
      {job.jumperWires.length > 0 ? (
        <Table
          caption="Jumper wires"
          rows={job.jumperWires}
          rowKey={(wire) => wire.id}
          columns={[
            { head: 'Wire', kind: 'rowhead', cell: (wire) => `${wire.fromPoint} to ${wire.toPoint}` },
            { head: 'Size', cell: (wire) => `${wire.lengthMm} mm of ${wire.diameterUm / 1000} mm` },
            { head: 'Reading', kind: 'number', cell: (wire) => `${wire.milliohms} mΩ` },
            { head: 'Beside the copper', cell: (wire) => <Verdict wire={wire} /> },
          ]}
        />
      ) : null}
      {isOpen ? (
        <ActionForm
          action={addWire.bind(null, job.number)}
          hidden={carriedFields(job.version)}
          label="Add a jumper wire"
          summary="Add a jumper wire"
        >
          <TextField name="from" label="From" hint="Like pin A6 of the socket." width="half" maxLength={60} />
          <TextField name="to" label="To" hint="Like resistor R12." width="half" maxLength={60} />
          <CountField name="length" label="Length" unit="mm" />
          <TextField
            name="diameter"
            label="Diameter of the copper"
            inputMode="decimal"
            width="short"
            unit="mm"
            defaultValue={USUAL_JUMPER_MM}
          />
          <TextField
            name="reading"
            label="Reading from end to end"
            hint="Leads zeroed."
            inputMode="decimal"
            width="short"
            mono
          />
          <Select
            name="unit"
            label="Unit of the reading"
            width="half"
            choices={[
              { value: 'milliohm', label: 'mΩ (milliohm)' },
              { value: 'ohm', label: 'Ω (ohm)' },
            ]}
            defaultValue="milliohm"
          />
          <SubmitButton
            label="Record the wire"
            consequence="Kept with your name, and printed on the certificate’s second page."
          />
        </ActionForm>
      ) : null}
    </div>
  );
}

const TAGS = {
  sound: <Tag tone="good">as it should be</Tag>,
  'too-high': <Tag tone="warn">too high</Tag>,
  'too-low': <Tag tone="warn">too low</Tag>,
};

function Verdict({ wire }: { wire: Wire }) {
  const found = wireVerdict(wire);
  return (
    <>
      {TAGS[found.verdict]} <span className="text-small text-soft">{wireSentence(found)}</span>
    </>
  );
}
