'use server';
import { limitCaller } from '@/app/limit-caller';
import type { FormState } from '@/app/ui/forms/form-state';
import { waitSentence } from '@/app/ui/forms/wait-sentence';
import { askStart } from '@/lib/jobs/ask-start';
import { moveJob } from '@/lib/jobs/move';
import { nameParcel } from '@/lib/jobs/name-parcel';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { sendMessage } from '@/lib/jobs/send-message';
import { withdraw } from '@/lib/jobs/withdraw';
import { Refusal } from '@/lib/outcome';
import { approveAfterNo } from '@/lib/quotes/approve-after-no';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { onLink } from './on-link';
import {
  afterNoForm,
  contestForm,
  decisionForm,
  messageForm,
  parcelForm,
  pressForm,
  withdrawForm,
} from './schema';

const CUSTOMER = { kind: 'customer' } as const;

export async function decide(token: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onLink({
    token,
    schema: decisionForm,
    formData,
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
}

/** Yes after all, to the price that was declined. */
export async function sayYesAfterAll(
  token: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onLink({
    token,
    schema: afterNoForm,
    formData,
    done: 'accepted',
    work: ({ data: { start, terms, ...data }, ...call }) =>
      approveAfterNo({ ...call, ...data, isStartAsked: start === 'yes', isTermsAccepted: terms === 'yes' }),
  });
}

export async function writeMessage(
  token: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onLink({
    token,
    schema: messageForm,
    formData,
    done: 'message#messages',
    photos: {
      most: MOST_PHOTOS,
      mayBring: async (jobId) => {
        const limit = await limitCaller(`message-${jobId}`, { max: 20, windowSeconds: 3600 });
        if (!limit.allowed) throw new Refusal('too-many', waitSentence(limit.waitSeconds));
      },
    },
    work: ({ data, ...call }) => sendMessage({ ...call, ...data, actor: CUSTOMER }),
  });
}

export async function giveReference(
  token: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onLink({
    token,
    schema: parcelForm,
    formData,
    done: ({ reference }: { reference: string }) => (reference === '' ? 'no-reference' : 'reference'),
    work: async ({ data, ...call }) => {
      await nameParcel({ ...call, ...data });
      return data;
    },
  });
}

export async function cancelBooking(
  token: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onLink({
    token,
    schema: pressForm,
    formData,
    done: 'cancelled',
    work: ({ jobId, now }) =>
      moveJob({ jobId, move: 'cancel', note: 'Cancelled by the customer', actor: CUSTOMER, now }),
  });
}

export async function askForStart(token: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onLink({
    token,
    schema: pressForm,
    formData,
    done: 'start',
    work: ({ jobId, now }) => askStart({ jobId, now }),
  });
}

export async function withdrawFromContract(
  token: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onLink({
    token,
    schema: withdrawForm,
    formData,
    done: 'withdrawn',
    work: ({ data, ...call }) => withdraw({ ...call, ...data }),
  });
}

export async function contest(token: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onLink({
    token,
    schema: contestForm,
    formData,
    done: 'contested',
    work: ({ data, ...call }) => contestRuling({ ...call, ...data }),
  });
}
