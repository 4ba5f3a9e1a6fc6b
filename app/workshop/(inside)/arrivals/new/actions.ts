'use server';
import { withStoredPhotos } from '@/app/store-photos';
import type { FormAction } from '@/app/ui/forms/form-state';
import { onForm } from '@/app/workshop/on-form';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { walkIn } from '@/lib/jobs/walk-in';
import { walkInForm } from '../[number]/schema';

/** Opens a job for a parcel that came without a booking. */
export const openForParcel: FormAction = async (_before, formData) =>
  onForm(formData, {
    permission: 'take-in',
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
