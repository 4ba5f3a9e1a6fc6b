'use server';
import { onlyPlain } from '@/app/only-plain';
import { withStoredPhotos } from '@/app/store-photos';
import type { FormAction } from '@/app/ui/forms/form-state';
import { onForm } from '@/app/workshop/on-form';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { openClaimAtDesk } from '@/lib/warranty/open-claim-at-desk';
import { deskClaimForm } from './schema';

/** Opens a claim in the customer's place, and takes the unit in where it is here. */
export const openForCustomer: FormAction<[certificateNumber: string]> = async (
  certificateNumber,
  _before,
  formData,
) => {
  onlyPlain(certificateNumber);
  return onForm(formData, {
    permission: 'take-in',
    arrays: ['photos'],
    schema: deskClaimForm,
    work: ({ data: { serial, symptom, details, where, extra, battery, data, reason, ...address }, ...by }) =>
      withStoredPhotos(formData, { field: 'photos', most: MOST_PHOTOS }, (photos) =>
        openClaimAtDesk({
          certificateNumber,
          serial,
          symptom,
          details,
          extra,
          reason,
          isHere: where === 'here',
          address,
          batteryAnswer: battery,
          dataAnswer: data,
          photos,
          ...by,
        }),
      ),
    after: ({ claimNumber, jobNumber }, { where }) =>
      where === 'here' ? `/workshop/arrivals/${jobNumber}` : `/workshop/claims/${claimNumber}`,
  });
};
