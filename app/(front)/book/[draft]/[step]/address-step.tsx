import { ActionForm } from '@/app/ui/forms/action-form';
import { AddressFields } from '@/app/ui/forms/address-fields';
import { SubmitBar } from '@/app/ui/forms/submit';
import { saveAddress } from '../../actions';
import { countryChoices } from '../../countries';
import type { StepProps } from './step-props';

export function AddressStep({ token, repair, workshop, answers }: StepProps) {
  return (
    <ActionForm action={saveAddress.bind(null, token)}>
      <AddressFields
        countries={countryChoices(workshop.country, workshop.locale)}
        defaults={answers.address ?? repair.quote?.known}
      />
      <SubmitBar
        label="Continue"
        consequence="Next: a last look before you book."
        second={{ href: `/book/${token}/parcel`, label: 'Back' }}
      />
    </ActionForm>
  );
}
