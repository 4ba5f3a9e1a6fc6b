'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { refused } from '@/app/refused';
import { storePhotos } from '@/app/store-photos';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { staffActor } from '@/app/workshop/staff-actor';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { walkIn } from '@/lib/jobs/walk-in';
import { attempt } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { MOST_PHOTOS, walkInForm } from '../[number]/schema';

/** Opens a job for a parcel that came without a booking. */
export async function openForParcel(_before: FormState, formData: FormData): Promise<FormState> {
  const staff = await requireStaff(rolesThatMay('take-in'));
  const parsed = parseForm(walkInForm, formData, ['photos']);
  if (!parsed.ok) return parsed.state;
  const { repair, battery, name, email, phone, address1, address2, postcode, town, country, ...read } =
    parsed.data;
  const values = typedValues(formData, ['photos']);
  const stored = await storePhotos(formData.getAll('photos'), MOST_PHOTOS);
  if (!stored.ok) return { errors: { photos: [stored.sentence] }, values };
  let number = '';
  try {
    const outcome = await attempt(() =>
      walkIn({
        ...read,
        repairId: repair,
        batteryAnswer: battery,
        customer: {
          name,
          email,
          phone,
          addressLines: [address1, address2].filter((line) => line !== ''),
          postcode,
          town,
          country,
        },
        photos: stored.photos,
        actor: staffActor(staff),
        now: now(),
      }),
    );
    if (!outcome.ok) {
      await stored.forget();
      return refused(outcome.refusal, values);
    }
    number = outcome.value.number;
  } catch (error) {
    await stored.forget();
    throw error;
  }
  redirect(`/workshop/arrivals/${number}` as Route);
}
