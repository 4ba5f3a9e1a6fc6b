'use server';
import type { FormState } from '@/app/ui/forms/form-state';
import { recordWire } from '@/lib/bench/record-wire';
import { onJob } from './action-kit';
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
