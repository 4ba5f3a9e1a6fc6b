'use server';
import { refresh } from 'next/cache';
import { onlyPlain } from '@/app/only-plain';
import { readAmount } from '@/app/read-amount';
import { countedField } from '@/app/ui/forms/counted-field';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { jobRefused } from '@/app/workshop/job-refused';
import { senderOf } from '@/app/workshop/sender-of-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { now } from '@/lib/clock';
import { cameBack } from '@/lib/jobs/came-back';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { attempt, Refusal } from '@/lib/outcome';
import { correctReference } from '@/lib/parcels/correct-reference';
import { keepParcel } from '@/lib/parcels/keep-parcel';
import type { ParcelFacts } from '@/lib/parcels/stored-parcel';
import { dispatch } from '@/lib/warranty/dispatch';
import { onJob } from './action-kit';
import { cameBackForm, dispatchForm, type ParcelTyped, parcelForm, referenceForm } from './dispatch-schema';

/** Sends a unit back, or gives it to whoever collects it; or, at "Work out", keeps what was said of its parcel and shows the form again with every carrier's answer. */
export async function sendBack(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  if (formData.get('intent') === 'work-out') return workOut(number, formData);
  return onJob({
    permission: 'dispatch',
    number,
    schema: dispatchForm,
    formData,
    part: 'moves',
    work: async (call) => {
      const { data } = call;
      if (data.by === 'collected') {
        await dispatch({ ...call, handover: { by: 'collected' }, postage: 0 });
        return;
      }
      const { by, carrier, carrierReference } = data;
      const postage = data.postage === '' ? 0 : await readAmount(data.postage, 'postage');
      const handover = { by, carrier, carrierReference };
      await dispatch({ ...call, handover, postage, parcel: await parcelOf(data) });
    },
  });
}

/** Takes in a parcel that its carrier brought back. */
export async function takeBack(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: permissionOf('came-back'),
    number,
    schema: cameBackForm,
    formData,
    part: 'moves',
    work: (call) => cameBack({ ...call, reason: call.data.reason }),
  });
}

export async function correctReferenceAction(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onJob({
    permission: 'dispatch',
    number,
    schema: referenceForm,
    formData,
    part: 'moves',
    work: (call) => correctReference({ ...call, carrierReference: call.data.carrierReference }),
  });
}

async function workOut(number: string, formData: FormData): Promise<FormState> {
  onlyPlain(number);
  const sender = await senderOf('dispatch', formData);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const job = await jobByNumber(number);
  if (!job) return { message: 'There is no job with this number.' };
  const parsed = parseForm(parcelForm, formData);
  if (!parsed.ok) return parsed.state;
  const seen = countedField.safeParse(formData.get('version'));
  if (!seen.success) return { message: 'This form was not complete. Load the page again.' };
  const version = seen.data;
  const values = typedValues(formData);
  const outcome = await attempt(async () =>
    keepParcel({
      jobId: job.id,
      version,
      parcel: await parcelOf(parsed.data),
      actor: staffActor(staff),
      now: now(),
    }),
  );
  if (!outcome.ok) return jobRefused(outcome.refusal, { jobNumber: job.number, version, values });
  refresh();
  return { values, done: 'The parcel is kept. What each carrier says is below. Nothing is sent yet.' };
}

async function parcelOf(typed: ParcelTyped): Promise<ParcelFacts> {
  const { weight, length, width, height, value, battery } = typed;
  const valueMinor = value === '' ? null : await readAmount(value, 'value');
  if (valueMinor !== null && valueMinor < 0) {
    throw new Refusal('invalid', 'Enter an amount that is not below zero', 'value');
  }
  const sides =
    length === null || width === null || height === null ? null : ([length, width, height] as const);
  return { grams: weight, sides, valueMinor, battery };
}
