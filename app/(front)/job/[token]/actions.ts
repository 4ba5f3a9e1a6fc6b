'use server';
import { limitCaller } from '@/app/limit-caller';
import { readAmount } from '@/app/read-amount';
import type { FormAction } from '@/app/ui/forms/form-state';
import { waitSentence } from '@/app/ui/forms/wait-sentence';
import { askStart } from '@/lib/jobs/ask-start';
import { moveJob } from '@/lib/jobs/move';
import { nameParcel } from '@/lib/jobs/name-parcel';
import { MOST_PHOTOS, MOST_RECEIPTS } from '@/lib/jobs/rules/most-photos';
import { sendMessage } from '@/lib/jobs/send-message';
import { withdraw } from '@/lib/jobs/withdraw';
import { Refusal } from '@/lib/outcome';
import { approveAfterNo } from '@/lib/quotes/approve-after-no';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { askPostage } from '@/lib/warranty/ask-postage';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { onLink } from './on-link';
import {
  afterNoForm,
  contestForm,
  decisionForm,
  messageForm,
  parcelForm,
  postageForm,
  pressForm,
  withdrawForm,
} from './schema';

const CUSTOMER = { kind: 'customer' } as const;

export const decide: FormAction<[token: string]> = async (token, _before, formData) =>
  onLink(token, formData, {
    schema: decisionForm,
    done: (decision: string) => decision,
    work: ({ data: { start, terms, ...data }, ...call }) =>
      decideOffer({
        ...call,
        ...data,
        isStartAsked: start === 'yes',
        isTermsAccepted: terms === 'yes',
        actor: CUSTOMER,
      }),
  });

/** Yes after all, to the price that was declined. */
export const sayYesAfterAll: FormAction<[token: string]> = async (token, _before, formData) =>
  onLink(token, formData, {
    schema: afterNoForm,
    done: 'accepted',
    work: ({ data: { start, terms, ...data }, ...call }) =>
      approveAfterNo({ ...call, ...data, isStartAsked: start === 'yes', isTermsAccepted: terms === 'yes' }),
  });

export const writeMessage: FormAction<[token: string]> = async (token, _before, formData) =>
  onLink(token, formData, {
    schema: messageForm,
    done: 'message#messages',
    photos: { most: MOST_PHOTOS, mayBring: mayBringPhotos },
    work: ({ data, ...call }) => sendMessage({ ...call, ...data, actor: CUSTOMER }),
  });

/** Photos are stored before the rest of a form is read, so how many come on one job is counted first. */
async function mayBringPhotos(jobId: string): Promise<void> {
  const limit = await limitCaller(`message-${jobId}`, { max: 20, windowSeconds: 3600 });
  if (!limit.allowed) throw new Refusal('too-many', waitSentence(limit.waitSeconds));
}

/** What posting the unit under a covered claim cost. */
export const askForPostage: FormAction<[token: string]> = async (token, _before, formData) =>
  onLink(token, formData, {
    schema: postageForm,
    done: 'postage#claim',
    photos: { most: MOST_RECEIPTS, mayBring: mayBringPhotos },
    work: async ({ data, ...call }) =>
      askPostage({ ...call, amount: await readAmount(data.amount, 'amount'), to: data.to }),
  });

export const giveReference: FormAction<[token: string]> = async (token, _before, formData) =>
  onLink(token, formData, {
    schema: parcelForm,
    done: ({ reference }: { reference: string }) => (reference === '' ? 'no-reference' : 'reference'),
    work: async ({ data, ...call }) => {
      await nameParcel({ ...call, ...data });
      return data;
    },
  });

export const cancelBooking: FormAction<[token: string]> = async (token, _before, formData) =>
  onLink(token, formData, {
    schema: pressForm,
    done: 'cancelled',
    work: ({ jobId, now }) =>
      // The history says who, and its letter needs no reason that the customer gave nobody.
      moveJob({ jobId, move: 'cancel', note: '', actor: CUSTOMER, now }),
  });

export const askForStart: FormAction<[token: string]> = async (token, _before, formData) =>
  onLink(token, formData, {
    schema: pressForm,
    done: 'start',
    work: ({ jobId, now }) => askStart({ jobId, now }),
  });

export const withdrawFromContract: FormAction<[token: string]> = async (token, _before, formData) =>
  onLink(token, formData, {
    schema: withdrawForm,
    done: 'withdrawn',
    work: ({ data, ...call }) => withdraw({ ...call, ...data }),
  });

export const contest: FormAction<[token: string]> = async (token, _before, formData) =>
  onLink(token, formData, {
    schema: contestForm,
    done: 'contested',
    work: ({ data, ...call }) => contestRuling({ ...call, ...data }),
  });
