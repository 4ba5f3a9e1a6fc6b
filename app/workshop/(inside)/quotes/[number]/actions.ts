'use server';
import type { FormAction } from '@/app/ui/forms/form-state';
import { askCustomer } from '@/lib/quotes/ask-customer';
import { renewQuoteLink } from '@/lib/quotes/renew-quote-link';
import { settleMessage } from '@/lib/quotes/settle-message';
import { turnDown } from '@/lib/quotes/turn-down';
import { writeToCustomer } from '@/lib/quotes/write-to-customer';
import { settleForm } from '../../settle-schema';
import { onQuote } from './quote-kit';
import { messageForm, nothingForm, questionForm, turnDownForm } from './schema';

export const askQuestion: FormAction<[number: string]> = async (number, _before, formData) =>
  onQuote(number, formData, {
    permission: 'take-in',
    schema: questionForm,
    part: 'messages',
    work: ({ data, ...call }) => askCustomer({ ...call, text: data.text }),
  });

/** Words beside a price that was sent; nothing moves. */
export const writeMessage: FormAction<[number: string]> = async (number, _before, formData) =>
  onQuote(number, formData, {
    permission: 'take-in',
    schema: messageForm,
    part: 'messages',
    work: ({ data, ...call }) => writeToCustomer({ ...call, text: data.text }),
  });

export const settleWords: FormAction<[number: string]> = async (number, _before, formData) =>
  onQuote(number, formData, {
    permission: 'take-in',
    schema: settleForm,
    part: 'messages',
    work: ({ data, ...call }) => settleMessage({ ...call, ...data, messageId: data.message }),
  });

export const turnDownRequest: FormAction<[number: string]> = async (number, _before, formData) =>
  onQuote(number, formData, {
    permission: 'money',
    schema: turnDownForm,
    part: 'history',
    work: ({ data, ...call }) => turnDown({ ...call, text: data.text }),
  });

export const newQuoteLink: FormAction<[number: string]> = async (number, _before, formData) =>
  onQuote(number, formData, {
    permission: 'take-in',
    schema: nothingForm,
    part: 'history',
    work: (call) => renewQuoteLink(call),
  });
