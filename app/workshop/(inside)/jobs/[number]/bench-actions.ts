'use server';
import type { FormState } from '@/app/ui/forms/form-state';
import { putBackPart } from '@/lib/bench/put-back-part';
import { recordWire } from '@/lib/bench/record-wire';
import { onJob } from './action-kit';
import { putBackForm } from './schema';
import { wireForm } from './wire-schema';

export async function addWire(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'bench',
    number,
    schema: wireForm,
    formData,
    part: 'wires',
    work: ({ data, ...call }) => recordWire({ ...call, wire: data }),
  });
}

export async function putBack(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'bench',
    number,
    schema: putBackForm,
    formData,
    part: 'parts',
    work: ({ data, ...call }) => putBackPart({ ...call, partUseId: data.use }),
  });
}
