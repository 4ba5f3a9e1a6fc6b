'use server';
import type { FormAction } from '@/app/ui/forms/form-state';
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

export const addWire: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'bench',
    schema: wireForm,
    part: 'wires',
    work: ({ data, ...call }) => recordWire({ ...call, wire: data }),
  });

export const putBack: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'bench',
    schema: putBackForm,
    part: 'parts',
    work: ({ data, ...call }) => putBackPart({ ...call, partUseId: data.use }),
  });

export const sayNeeded: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'bench',
    schema: neededForm,
    part: 'parts',
    work: ({ data, ...call }) => sayIfNeeded({ ...call, partId: data.part, isNeeded: data.needed === 'yes' }),
  });

export const pieceOut: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'bench',
    schema: pieceOutForm,
    part: 'parts',
    work: ({ data, ...call }) => takeOutPiece({ ...call, partUseId: data.use }),
  });

export const takeBackRecorded: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'take-in',
    schema: takeBackForm,
    part: 'taken-back',
    work: ({ data, ...call }) => takeBackEntry({ ...call, ...data.entry, reason: data.reason }),
  });

export const stopWork: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: permissionOf('stop-repair'),
    schema: stopForm,
    part: 'moves',
    work: ({ data, ...call }) => stopRepair({ ...call, ...data }),
  });

export const awaitParts: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: permissionOf('wait-for-parts'),
    schema: waitForm,
    part: 'moves',
    work: ({ data: { parts, other, expectedOn }, ...call }) =>
      waitForParts({
        ...call,
        parts: [...parts, ...(other === '' ? [] : [{ name: other, quantity: 1 }])],
        expectedOn,
      }),
  });
