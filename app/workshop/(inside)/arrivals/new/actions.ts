'use server';
import { withStoredPhotos } from '@/app/store-photos';
import type { FormState } from '@/app/ui/forms/form-state';
import { onForm } from '@/app/workshop/on-form';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { walkIn } from '@/lib/jobs/walk-in';
import { walkInForm } from '../[number]/schema';

/** Opens a job for a parcel that came without a booking. */
export async function openForParcel(_before: FormState, formData: FormData): Promise<FormState> {
  return onForm({
    permission: 'take-in',
    formData,
    arrays: ['photos'],
    schema: walkInForm,
    work: ({ data: { repair, battery, isOther, formKey, serial, problem, extra, ...customer }, ...by }) =>
      withStoredPhotos(formData, { field: 'photos', most: MOST_PHOTOS }, (photos) =>
        walkIn({
          formKey,
          serial,
          problem,
          extra,
          repairId: repair,
          batteryAnswer: battery,
          isOtherMatter: isOther,
          customer,
          photos,
          ...by,
        }),
      ),
    after: ({ number }) => `/workshop/arrivals/${number}`,
  });
}
