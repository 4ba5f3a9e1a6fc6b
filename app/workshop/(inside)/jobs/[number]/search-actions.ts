'use server';
import type { FormState } from '@/app/ui/forms/form-state';
import { endSearch, seekParcel } from '@/lib/jobs/seek-parcel';
import { onJob } from './action-kit';
import { searchEndForm, seekForm } from './search-schema';

/** Keeps that a parcel on its way back is looked for. */
export async function seek(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'dispatch',
    number,
    schema: seekForm,
    formData,
    part: 'moves',
    work: (call) => seekParcel({ ...call, note: call.data.note }),
  });
}

/** Says how the search for a parcel ended. */
export async function sayHowItEnded(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onJob({
    permission: 'dispatch',
    number,
    schema: searchEndForm,
    formData,
    part: 'moves',
    work: (call) => endSearch({ ...call, ...call.data }),
  });
}
