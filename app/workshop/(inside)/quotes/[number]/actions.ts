'use server';
import type { FormState } from '@/app/ui/forms/form-state';
import { askCustomer } from '@/lib/quotes/ask-customer';
import { renewQuoteLink } from '@/lib/quotes/renew-quote-link';
import { settleMessage } from '@/lib/quotes/settle-message';
import { turnDown } from '@/lib/quotes/turn-down';
import { writeToCustomer } from '@/lib/quotes/write-to-customer';
import { settleForm } from '../../settle-schema';
import { onQuote } from './quote-kit';
import { messageForm, nothingForm, questionForm, turnDownForm } from './schema';

export async function askQuestion(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onQuote({
    permission: 'take-in',
    number,
    schema: questionForm,
    formData,
    part: 'messages',
    work: async ({ data, ...call }) => {
      await askCustomer({ ...call, text: data.text });
      return null;
    },
  });
}

/** Words beside a price that was sent; nothing moves. */
export async function writeMessage(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onQuote({
    permission: 'take-in',
    number,
    schema: messageForm,
    formData,
    part: 'messages',
    work: async ({ data, ...call }) => {
      await writeToCustomer({ ...call, text: data.text });
      return null;
    },
  });
}

export async function settleWords(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onQuote({
    permission: 'take-in',
    number,
    schema: settleForm,
    formData,
    part: 'messages',
    work: async ({ data, ...call }) => {
      await settleMessage({ ...call, ...data, messageId: data.message });
      return null;
    },
  });
}

export async function turnDownRequest(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onQuote({
    permission: 'money',
    number,
    schema: turnDownForm,
    formData,
    part: 'history',
    work: async ({ data, ...call }) => {
      await turnDown({ ...call, text: data.text });
      return null;
    },
  });
}

export async function newQuoteLink(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onQuote({
    permission: 'take-in',
    number,
    schema: nothingForm,
    formData,
    part: 'history',
    work: async (call) => {
      await renewQuoteLink(call);
      return null;
    },
  });
}
