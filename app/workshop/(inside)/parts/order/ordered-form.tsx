import type { ReactNode } from 'react';
import { newFormKey } from '@/app/form-key';
import { ActionForm } from '@/app/ui/forms/action-form';
import { Checkbox } from '@/app/ui/forms/choices';
import { CountField } from '@/app/ui/forms/count-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import type { Day } from '@/lib/calendar/day';
import { orderPartsAction } from '../actions';

type Row = { id: string; name: string; order: number; supplier: string };

/** The order list as a form: what of it was ordered now, from whom, and for when. */
export function OrderedForm(props: { rows: readonly Row[]; today: Day; children: ReactNode }) {
  const suppliers = [...new Set(props.rows.map(({ supplier }) => supplier))].filter(Boolean);
  return (
    <ActionForm action={orderPartsAction} hidden={{ formKey: newFormKey() }} label="Note what was ordered">
      {props.children}
      <OrderFields
        suppliers={suppliers}
        today={props.today}
        hint="One supplier at a time: tick what was ordered there."
      />
    </ActionForm>
  );
}

/** Notes an order of one part, whether the order list asks for it or not. */
export function OrderOneForm(props: {
  part: Pick<Row, 'id' | 'name'>;
  suppliers: readonly string[];
  today: Day;
}) {
  const { id, name } = props.part;
  return (
    <ActionForm
      action={orderPartsAction}
      hidden={{ formKey: newFormKey(), ordered: id }}
      label={`Note an order of ${name}`}
      summary="Note an order of it"
    >
      <CountField name={`pieces-${id}`} label="Pieces" />
      <OrderFields suppliers={props.suppliers} today={props.today} />
    </ActionForm>
  );
}

function OrderFields(props: { suppliers: readonly string[]; today: Day; hint?: string }) {
  const { suppliers, today, hint } = props;
  return (
    <>
      <TextField
        name="supplier"
        label="Ordered from"
        hint={hint}
        width="half"
        list={suppliers}
        defaultValue={suppliers.length === 1 ? suppliers[0] : undefined}
      />
      <TextField
        name="orderedOn"
        label="Ordered on"
        type="date"
        width="half"
        max={today}
        defaultValue={today}
      />
      <TextField name="expectedOn" label="Expected on" type="date" width="half" optional />
      <SubmitButton
        label="Note as ordered"
        kind="second"
        consequence="The order list asks for these pieces no more. They count as stock once they are booked in under their part. Nothing is sent to anybody."
      />
    </>
  );
}

/** Whether a part was ordered, and how many pieces. */
export function OrderedCell({ row }: { row: Row }) {
  const about = <span className="sr-only">{`: ${row.name}`}</span>;
  return (
    <>
      <Checkbox name="ordered" value={row.id} label={<>Ordered{about}</>} />
      <CountField name={`pieces-${row.id}`} label={<>Pieces{about}</>} defaultValue={row.order} />
    </>
  );
}
