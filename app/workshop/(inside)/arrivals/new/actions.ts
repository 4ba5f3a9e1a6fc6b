'use server';
import { redirect } from 'next/navigation';
import { refused } from '@/app/refused';
import { withStoredPhotos } from '@/app/store-photos';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { senderOf } from '@/app/workshop/sender-of-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { now } from '@/lib/clock';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { walkIn } from '@/lib/jobs/walk-in';
import { attempt } from '@/lib/outcome';
import { walkInForm } from '../[number]/schema';

/** Opens a job for a parcel that came without a booking. */
export async function openForParcel(_before: FormState, formData: FormData): Promise<FormState> {
  const sender = await senderOf('take-in', formData, ['photos']);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const parsed = parseForm(walkInForm, formData, ['photos']);
  if (!parsed.ok) return parsed.state;
  const { repair, battery, isOther, formKey, serial, problem, extra, ...customer } = parsed.data;
  const outcome = await attempt(() =>
    withStoredPhotos({
      entries: formData.getAll('photos'),
      most: MOST_PHOTOS,
      field: 'photos',
      work: (photos) =>
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
          actor: staffActor(staff),
          now: now(),
        }),
    }),
  );
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/arrivals/${outcome.value.number}`);
}
