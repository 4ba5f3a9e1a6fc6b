'use server';
import type { FormState } from '@/app/ui/forms/form-state';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { undoArrival } from '@/lib/jobs/undo-arrival';
import { undoDispatch } from '@/lib/warranty/undo-dispatch';
import { onJob } from './action-kit';
import { undoForm } from './undo-schema';

/** Takes back that a unit is here. */
export async function notHere(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: permissionOf('undo-arrival'),
    number,
    schema: undoForm,
    formData,
    part: 'moves',
    work: (call) => undoArrival({ ...call, reason: call.data.reason }),
  });
}

/** Takes back that a unit left. */
export async function notGone(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: permissionOf('undo-dispatch'),
    number,
    schema: undoForm,
    formData,
    part: 'moves',
    work: (call) => undoDispatch({ ...call, reason: call.data.reason }),
  });
}
