'use server';
import type { FormAction } from '@/app/ui/forms/form-state';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { undoArrival } from '@/lib/jobs/undo-arrival';
import { undoDispatch } from '@/lib/warranty/undo-dispatch';
import { onJob } from './action-kit';
import { undoForm } from './undo-schema';

/** Takes back that a unit is here. */
export const notHere: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: permissionOf('undo-arrival'),
    schema: undoForm,
    part: 'moves',
    work: (call) => undoArrival({ ...call, reason: call.data.reason }),
  });

/** Takes back that a unit left. */
export const notGone: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: permissionOf('undo-dispatch'),
    schema: undoForm,
    part: 'moves',
    work: (call) => undoDispatch({ ...call, reason: call.data.reason }),
  });
