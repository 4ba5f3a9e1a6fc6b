'use server';
import { readAmount } from '@/app/read-amount';
import { withStoredPhotos } from '@/app/store-photos';
import type { FormAction } from '@/app/ui/forms/form-state';
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

export const move: FormAction<[number: string]> = async (number, _before, formData) => {
  const key = String(formData.get('move') ?? '');
  if (!isPlainMove(key)) return { message: 'There is no such move.' };
  return onJob(number, formData, {
    permission: permissionOf(key),
    schema: moveForm,
    ...(key === 'prove' ? { part: 'sheet', page: '/sheet' as const } : { part: 'moves' }),
    work: (call) => moveJob({ ...call, move: key, note: call.data.note }),
  });
};

export const settle: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'take-in',
    schema: serialForm,
    part: 'unit',
    work: (call) => settleSerial({ ...call, ...call.data }),
  });

export const addFinding: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'bench',
    schema: findingForm,
    part: 'findings',
    work: (call) =>
      withStoredPhotos(formData, { field: 'photos', most: MOST_PHOTOS }, (photos) =>
        recordFinding({ ...call, text: call.data.text, photos }),
      ),
  });

export const addJobPhotos: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'take-in',
    schema: photoForm,
    part: 'photos',
    work: (call) =>
      withStoredPhotos(formData, { field: 'photos', most: MOST_PHOTOS }, async (photos) => {
        if (photos.length === 0) throw new Refusal('invalid', 'Choose a photo first.', 'photos');
        await addPhotos({ ...call, purpose: call.data.purpose, photos });
      }),
  });

export const addWork: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'bench',
    schema: workForm,
    part: 'work',
    work: (call) => recordWork({ ...call, ...call.data }),
  });

export const takePart: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'bench',
    schema: partForm,
    part: 'parts',
    work: (call) => usePartOnJob({ ...call, lotId: call.data.lot, quantity: call.data.quantity }),
  });

export const addPayment: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'money',
    schema: paymentForm,
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

export const endPostageAsked: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'money',
    schema: postageEndForm,
    part: 'money',
    work: ({ data, ...call }) => endPostage({ ...call, ...data }),
  });

export const issueNow: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'money',
    schema: nothingForm,
    part: 'money',
    work: (call) => issueInvoice(call),
  });

export const writeToCustomer: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'take-in',
    schema: messageForm,
    part: 'messages',
    work: ({ data, ...call }) => sendMessage({ ...call, ...data }),
  });

export const settleWords: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'take-in',
    schema: settleForm,
    part: 'messages',
    work: ({ data, ...call }) => settleMessage({ ...call, ...data, messageId: data.message }),
  });

export const newLink: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'take-in',
    schema: nothingForm,
    part: 'history',
    work: (call) => renewLink(call),
  });
