import { ActionForm } from '@/app/ui/forms/action-form';
import { AddressFields } from '@/app/ui/forms/address-fields';
import { SubmitBar } from '@/app/ui/forms/submit';
import { countryChoices } from '@/lib/workshop/places';
import { saveAddress } from '../../actions';
import type { StepProps } from './step-props';

export function AddressStep({ token, repair, workshop, answers }: StepProps) {
  return (
    <ActionForm action={saveAddress.bind(null, token)}>
      <AddressFields
        countries={countryChoices(workshop.locale, workshop.country)}
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
