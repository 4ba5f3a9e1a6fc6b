'use server';
import { readAmount } from '@/app/read-amount';
import { withStoredPhotos } from '@/app/store-photos';
import type { FormState } from '@/app/ui/forms/form-state';
import { usePartOnJob } from '@/lib/bench/use-part-on-job';
import { day } from '@/lib/calendar/day';
import { issueInvoice } from '@/lib/invoices/issue-invoice';
import { addPhotos } from '@/lib/jobs/add-photo';
import { isPlainMove, moveJob } from '@/lib/jobs/move';
import { recordFinding } from '@/lib/jobs/record-finding';
import { recordPayment } from '@/lib/jobs/record-payment';
import { recordWork } from '@/lib/jobs/record-work';
import { renewLink } from '@/lib/jobs/renew-link';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { sendMessage } from '@/lib/jobs/send-message';
import { settleMessage } from '@/lib/jobs/settle-message';
import { settleSerial } from '@/lib/jobs/settle-serial';
import { Refusal } from '@/lib/outcome';
import { endPostage } from '@/lib/warranty/end-postage';
import { settleForm } from '../../settle-schema';
import { onJob } from './action-kit';
import {
  findingForm,
  messageForm,
  moveForm,
  nothingForm,
  partForm,
  paymentForm,
  photoForm,
  postageEndForm,
  serialForm,
  workForm,
} from './schema';

export async function move(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  const key = String(formData.get('move') ?? '');
  if (!isPlainMove(key)) return { message: 'There is no such move.' };
  return onJob({
    permission: permissionOf(key),
    number,
    schema: moveForm,
    formData,
    ...(key === 'prove' ? { part: 'sheet', page: '/sheet' as const } : { part: 'moves' }),
    work: (call) => moveJob({ ...call, move: key, note: call.data.note }),
  });
}

export async function settle(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'take-in',
    number,
    schema: serialForm,
    formData,
    part: 'unit',
    work: (call) => settleSerial({ ...call, ...call.data }),
  });
}

export async function addFinding(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'bench',
    number,
    schema: findingForm,
    formData,
    part: 'findings',
    work: (call) =>
      withStoredPhotos(formData, { field: 'photos', most: MOST_PHOTOS }, (photos) =>
        recordFinding({ ...call, text: call.data.text, photos }),
      ),
  });
}

export async function addJobPhotos(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onJob({
    permission: 'take-in',
    number,
    schema: photoForm,
    formData,
    part: 'photos',
    work: (call) =>
      withStoredPhotos(formData, { field: 'photos', most: MOST_PHOTOS }, async (photos) => {
        if (photos.length === 0) throw new Refusal('invalid', 'Choose a photo first.', 'photos');
        await addPhotos({ ...call, purpose: call.data.purpose, photos });
      }),
  });
}

export async function addWork(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'bench',
    number,
    schema: workForm,
    formData,
    part: 'work',
    work: (call) => recordWork({ ...call, ...call.data }),
  });
}

export async function takePart(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'bench',
    number,
    schema: partForm,
    formData,
    part: 'parts',
    work: (call) => usePartOnJob({ ...call, lotId: call.data.lot, quantity: call.data.quantity }),
  });
}

export async function addPayment(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'money',
    number,
    schema: paymentForm,
    formData,
    part: 'money',
    work: async (call) => {
      const amount = await readAmount(call.data.amount, 'amount');
      const { tell, receivedOn, owed, payments } = call.data;
      await recordPayment({
        ...call,
        ...call.data,
        amount,
        receivedOn: day(receivedOn),
        shown: { owed, payments },
        tell: tell === 'yes',
      });
    },
  });
}

export async function endPostageAsked(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onJob({
    permission: 'money',
    number,
    schema: postageEndForm,
    formData,
    part: 'money',
    work: ({ data, ...call }) => endPostage({ ...call, ...data }),
  });
}

export async function issueNow(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'money',
    number,
    schema: nothingForm,
    formData,
    part: 'money',
    work: (call) => issueInvoice(call),
  });
}

export async function writeToCustomer(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onJob({
    permission: 'take-in',
    number,
    schema: messageForm,
    formData,
    part: 'messages',
    work: ({ data, ...call }) => sendMessage({ ...call, ...data }),
  });
}

export async function settleWords(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onJob({
    permission: 'take-in',
    number,
    schema: settleForm,
    formData,
    part: 'messages',
    work: ({ data, ...call }) => settleMessage({ ...call, ...data, messageId: data.message }),
  });
}

export async function newLink(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'take-in',
    number,
    schema: nothingForm,
    formData,
    part: 'history',
    work: (call) => renewLink(call),
  });
}
