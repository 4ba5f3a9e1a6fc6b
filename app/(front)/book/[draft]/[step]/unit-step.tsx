import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitBar } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { saveUnit } from '../../actions';
import type { StepProps } from './step-props';

export function UnitStep({ token, repair, answers }: StepProps) {
  const { serialPlace, serialExample } = repair.model;
  const place = serialPlace === '' ? 'You find it on the unit itself.' : asSentence(serialPlace);
  return (
    <ActionForm action={saveUnit.bind(null, token)}>
      <TextField
        name="serial"
        label="Serial number"
        hint={serialExample === '' ? place : `${place} It looks like ${serialExample}.`}
        mono
        autoComplete="off"
        maxLength={60}
        defaultValue={answers.unit?.serial}
      />
      <SubmitBar
        label="Continue"
        consequence="Your warranty certificate will carry this serial."
        second={
          repair.quote ? undefined : { href: `/prices/${repair.model.slug}`, label: 'My unit is another one' }
        }
      />
    </ActionForm>
  );
}

/** A place as the catalogue has it, with or without its full stop. */
function asSentence(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}
