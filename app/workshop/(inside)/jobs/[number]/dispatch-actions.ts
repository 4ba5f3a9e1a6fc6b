'use server';
import { readAmount } from '@/app/read-amount';
import type { FormAction, FormState } from '@/app/ui/forms/form-state';
import { cameBack } from '@/lib/jobs/came-back';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { Refusal } from '@/lib/outcome';
import { correctReference } from '@/lib/parcels/correct-reference';
import { keepParcel } from '@/lib/parcels/keep-parcel';
import type { ParcelFacts } from '@/lib/parcels/stored-parcel';
import { dispatch } from '@/lib/warranty/dispatch';
import { onJob } from './action-kit';
import { cameBackForm, dispatchForm, type ParcelTyped, parcelForm, referenceForm } from './dispatch-schema';

/** Sends a unit back, or gives it to whoever collects it; or, at "Work out", keeps what was said of its parcel and shows the form again with every carrier's answer. */
export const sendBack: FormAction<[number: string]> = async (number, _before, formData) => {
  if (formData.get('intent') === 'work-out') return workOut(number, formData);
  return onJob(number, formData, {
    permission: 'dispatch',
    schema: dispatchForm,
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
};

/** Takes in a parcel that its carrier brought back. */
export const takeBack: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: permissionOf('came-back'),
    schema: cameBackForm,
    part: 'moves',
    work: (call) => cameBack({ ...call, reason: call.data.reason }),
  });

export const correctReferenceAction: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'dispatch',
    schema: referenceForm,
    part: 'moves',
    work: (call) => correctReference({ ...call, carrierReference: call.data.carrierReference }),
  });

async function workOut(number: string, formData: FormData): Promise<FormState> {
  return onJob(number, formData, {
    permission: 'dispatch',
    schema: parcelForm,
    part: 'moves',
    work: async ({ data, ...call }) => keepParcel({ ...call, parcel: await parcelOf(data) }),
    done: 'The parcel is kept. What each carrier says is below. Nothing is sent yet.',
  });
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
