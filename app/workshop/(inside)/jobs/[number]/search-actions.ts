'use server';
import type { FormAction } from '@/app/ui/forms/form-state';
import { endSearch, seekParcel } from '@/lib/jobs/seek-parcel';
import { onJob } from './action-kit';
import { searchEndForm, seekForm } from './search-schema';

/** Keeps that a parcel on its way back is looked for. */
export const seek: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'dispatch',
    schema: seekForm,
    part: 'moves',
    work: (call) => seekParcel({ ...call, note: call.data.note }),
  });

/** Says how the search for a parcel ended. */
export const sayHowItEnded: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'dispatch',
    schema: searchEndForm,
    part: 'moves',
    work: (call) => endSearch({ ...call, ...call.data }),
  });
