'use server';
import type { FormState } from '@/app/ui/forms/form-state';
import { putBackPart } from '@/lib/bench/put-back-part';
import { recordWire } from '@/lib/bench/record-wire';
import { sayIfNeeded } from '@/lib/bench/say-if-needed';
import { takeOutPiece } from '@/lib/bench/take-out-piece';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { stopRepair } from '@/lib/jobs/stop-repair';
import { takeBackEntry } from '@/lib/jobs/take-back-entry';
import { waitForParts } from '@/lib/jobs/wait-for-parts';
import { onJob } from './action-kit';
import { neededForm, pieceOutForm, putBackForm, stopForm, takeBackForm, waitForm } from './schema';
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

export async function sayNeeded(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'bench',
    number,
    schema: neededForm,
    formData,
    part: 'parts',
    work: ({ data, ...call }) => sayIfNeeded({ ...call, partId: data.part, isNeeded: data.needed === 'yes' }),
  });
}

export async function pieceOut(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'bench',
    number,
    schema: pieceOutForm,
    formData,
    part: 'parts',
    work: ({ data, ...call }) => takeOutPiece({ ...call, partUseId: data.use }),
  });
}

export async function takeBackRecorded(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onJob({
    permission: 'take-in',
    number,
    schema: takeBackForm,
    formData,
    part: 'taken-back',
    work: ({ data, ...call }) => takeBackEntry({ ...call, ...data.entry, reason: data.reason }),
  });
}

export async function stopWork(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: permissionOf('stop-repair'),
    number,
    schema: stopForm,
    formData,
    part: 'moves',
    work: ({ data, ...call }) => stopRepair({ ...call, ...data }),
  });
}

export async function awaitParts(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: permissionOf('wait-for-parts'),
    number,
    schema: waitForm,
    formData,
    part: 'moves',
    work: ({ data: { parts, other, expectedOn }, ...call }) =>
      waitForParts({
        ...call,
        parts: [...parts, ...(other === '' ? [] : [{ name: other, quantity: 1 }])],
        expectedOn,
      }),
  });
}
