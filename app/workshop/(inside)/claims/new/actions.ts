'use server';
import { redirect } from 'next/navigation';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import { withStoredPhotos } from '@/app/store-photos';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { senderOf } from '@/app/workshop/sender-of-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { now } from '@/lib/clock';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { attempt } from '@/lib/outcome';
import { openClaimAtDesk } from '@/lib/warranty/open-claim-at-desk';
import { deskClaimForm } from './schema';

/** Opens a claim in the customer's place, and takes the unit in where it is here. */
export async function openForCustomer(
  certificateNumber: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(certificateNumber);
  const sender = await senderOf('take-in', formData, ['photos']);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const parsed = parseForm(deskClaimForm, formData, ['photos']);
  if (!parsed.ok) return parsed.state;
  const { serial, symptom, details, where, extra, battery, data, reason, ...address } = parsed.data;
  const isHere = where === 'here';
  const told = {
    certificateNumber,
    serial,
    symptom,
    details,
    extra,
    reason,
    isHere,
    address,
    batteryAnswer: battery,
    dataAnswer: data,
  };
  const outcome = await attempt(() =>
    withStoredPhotos({
      entries: formData.getAll('photos'),
      most: MOST_PHOTOS,
      field: 'photos',
      work: (photos) => openClaimAtDesk({ ...told, photos, actor: staffActor(staff), now: now() }),
    }),
  );
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData, ['photos']));
  const { claimNumber, jobNumber } = outcome.value;
  redirect(isHere ? `/workshop/arrivals/${jobNumber}` : `/workshop/claims/${claimNumber}`);
}
