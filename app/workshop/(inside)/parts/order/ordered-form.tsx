import type { ReactNode } from 'react';
import { newFormKey } from '@/app/form-key';
import { ActionForm } from '@/app/ui/forms/action-form';
import { Checkbox } from '@/app/ui/forms/choices';
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
      <TextField
        name="supplier"
        label="Ordered from"
        hint="One supplier at a time: tick what was ordered there."
        width="half"
        list={suppliers}
        defaultValue={suppliers.length === 1 ? suppliers[0] : undefined}
      />
      <TextField
        name="orderedOn"
        label="Ordered on"
        type="date"
        width="half"
        max={props.today}
        defaultValue={props.today}
      />
      <TextField name="expectedOn" label="Expected on" type="date" width="half" optional />
      <SubmitButton
        label="Note as ordered"
        consequence="The list asks for these pieces no more. They count as stock once they are booked in under their part. Nothing is sent to anybody."
      />
    </ActionForm>
  );
}

/** Whether a part was ordered, and how many pieces. */
export function OrderedCell({ row }: { row: Row }) {
  const about = <span className="sr-only">{`: ${row.name}`}</span>;
  return (
    <>
      <Checkbox name="ordered" value={row.id} label={<>Ordered{about}</>} />
      <TextField
        name={`pieces-${row.id}`}
        label={<>Pieces{about}</>}
        inputMode="numeric"
        width="short"
        defaultValue={row.order}
      />
    </>
  );
}
