import type { ReactNode } from 'react';
import { ActionForm } from '@/app/ui/forms/action-form';
import type { FormAction } from '@/app/ui/forms/form-state';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextLink } from '@/app/ui/page/text-link';
import type { WorkshopCard } from '@/lib/workshop/card';

type SettingsFormProps = {
  action: FormAction;
  workshop: WorkshopCard;
  label?: string;
  /** words on the button, and what pressing it sets off */
  save: string;
  consequence: string;
  /** what stands under the buttons and belongs to the form */
  below?: ReactNode;
  children: ReactNode;
};

/** A page of the settings is one form, which names the settings it was drawn from, and a way back without saving. */
export function SettingsForm(props: SettingsFormProps) {
  const { action, workshop, label, save, consequence, below, children } = props;
  return (
    <ActionForm action={action} hidden={{ seenAt: workshop.updatedAt.toISOString() }} label={label}>
      {children}
      <SubmitButton label={save} busy="Saving…" consequence={consequence} />
      <p>
        <TextLink href="/workshop/settings">Leave as it is</TextLink>
      </p>
      {below}
    </ActionForm>
  );
}
