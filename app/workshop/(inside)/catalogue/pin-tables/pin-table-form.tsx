import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { pinTableAction } from './actions';
import { PinsField } from './table-preview';

type Props = {
  label: string;
  replaces: string | null;
  known?: { name: string; source: string; text: string } | undefined;
};

/** A pin table of the workshop's own, new or in the place of another. */
export function PinTableForm({ label, replaces, known }: Props) {
  return (
    <ActionForm action={pinTableAction.bind(null, replaces)} label={label}>
      <TextField
        name="name"
        label="Connector"
        hint="As it is called on check sheets."
        width="half"
        maxLength={60}
        defaultValue={known?.name}
      />
      <TextField
        name="source"
        label="Where the table is from"
        hint="The maker’s sheet, or your own measurement and its day."
        optional
        defaultValue={known?.source}
      />
      <PinsField known={known?.text ?? ''} />
      <SubmitButton
        kind="second"
        label="Look at it"
        consequence="Draws the pins and the pairs. Nothing is kept."
      />
      <SubmitButton
        name="then"
        value="keep"
        label={replaces === null ? 'Keep this pin table' : 'Keep it in place of the old one'}
        consequence={
          replaces === null
            ? 'It can be chosen on check sheets from now on. It is never edited, only replaced.'
            : 'The old one is retired. Sheets made with it keep it; choose the new one on their next version.'
        }
      />
    </ActionForm>
  );
}
