import { z } from 'zod';
import { countedField, seenAmount } from '@/app/ui/forms/counted-field';
import { day, isDay } from '@/lib/calendar/day';
import { PAYMENT_PURPOSES } from '@/lib/invoices/rules/balance';
import { PAYMENT_METHODS } from '@/lib/jobs/record-payment';
import { STOPS } from '@/lib/jobs/rules/stop';
import { ENTRIES } from '@/lib/jobs/rules/take-back';
import { neededText, optionalText } from '@/lib/jobs/rules/typed-text';

/** Fields every form of the job sheet carries: the version the person saw, and a key that makes a second press harmless. */
export const carriedForm = z.object({ version: countedField, formKey: z.uuid().optional() });

const pieces = z.coerce
  .number({ error: 'Enter how many' })
  .int('Enter a whole number')
  .min(1, 'Enter how many')
  .max(1000, 'That is more than a shelf holds');
const waitedPieces = pieces.default(1);
const listedPart = z.uuid({ error: 'Choose a part of the list' }).optional();

/** Parts of the list, each with its pieces, and one that is not on it. */
export const waitForm = z
  .object({
    'part-1': listedPart,
    'pieces-1': waitedPieces,
    'part-2': listedPart,
    'pieces-2': waitedPieces,
    'part-3': listedPart,
    'pieces-3': waitedPieces,
    other: optionalText(120),
    expectedOn: z
      .string()
      .refine(isDay, 'Enter a day, like 2026-11-25')
      .transform(day)
      .nullable()
      .default(null),
  })
  .transform(({ other, expectedOn, ...form }) => ({
    parts: [
      { partId: form['part-1'], quantity: form['pieces-1'] },
      { partId: form['part-2'], quantity: form['pieces-2'] },
      { partId: form['part-3'], quantity: form['pieces-3'] },
    ].flatMap(({ partId, quantity }) => (partId === undefined ? [] : [{ partId, quantity }])),
    other,
    expectedOn,
  }));

export const moveForm = z.object({ move: z.string().max(40), note: optionalText(500) });
export const serialForm = z.object({
  serial: neededText('the serial on the unit', 60),
  note: optionalText(500),
});
export const findingForm = z.object({ text: neededText('what you found', 4000) });
export const photoForm = z.object({ purpose: z.enum(['arrival', 'serial', 'finding', 'work', 'proof']) });
export const workForm = z.object({
  text: neededText('what was done', 4000),
  minutes: z.coerce
    .number({ error: 'Enter the minutes as a whole number' })
    .int('Enter the minutes as a whole number')
    .min(0, 'Enter the minutes as a whole number')
    .max(6000, 'That is more than a hundred hours'),
});
export const partForm = z.object({
  lot: z.uuid({ error: 'Choose the lot the part came from' }),
  quantity: pieces,
});
export const putBackForm = z.object({ use: z.uuid({ error: 'Choose the part that goes back' }) });
export const neededForm = z.object({
  part: z.uuid({ error: 'Choose the part' }),
  needed: z.enum(['yes', 'no'], { error: 'Say whether it is needed' }),
});
export const pieceOutForm = z.object({ use: z.uuid({ error: 'Choose the part that is out' }) });
export const underRepairForm = z.object({
  repair: z.uuid({ error: 'Choose the repair it turned out to be' }),
});
export const besideForm = z.object({
  beside: z.uuid({ error: 'Choose the repair that is done as well' }),
});
export const newestSheetForm = z.object({ sheet: countedField });
const entryKind = z.enum(ENTRIES);
const ENTRY = new RegExp(`^(${ENTRIES.join('|')}):[0-9a-f-]{36}$`);

export const takeBackForm = z.object({
  /** its kind and its id: 'work:0199…' */
  entry: z
    .string({ error: 'Choose what was recorded by mistake' })
    .regex(ENTRY, 'Choose what was recorded by mistake')
    .transform((text) => {
      const end = text.indexOf(':');
      return { what: entryKind.parse(text.slice(0, end)), id: text.slice(end + 1) };
    }),
  reason: neededText('why it is taken back', 500),
});
export const stopForm = z.object({
  why: z.enum(STOPS, { error: 'Choose why it is not repaired' }),
  reason: neededText('why, in words for the customer', 1000),
});
export const paymentForm = z.object({
  amount: neededText('the amount', 20),
  method: z.enum(PAYMENT_METHODS, { error: 'Choose how it was paid' }),
  reference: optionalText(80),
  receivedOn: z
    .string({ error: 'Enter the day it was received' })
    .refine(isDay, 'Enter the day it was received'),
  purpose: z.enum(PAYMENT_PURPOSES, { error: 'Choose what it is for' }).default('price'),
  tell: z.enum(['yes', 'no']).default('yes'),
  /** what the form said was left to pay, minor units; below zero is to be given back */
  owed: seenAmount,
  /** how many payments it showed */
  payments: seenAmount,
});
export const messageForm = z.object({
  text: neededText('your message', 4000),
  /** the message that waited for an answer and was shown last; empty where none did */
  seen: z.uuid().or(z.literal('')).default(''),
});
export const postageEndForm = z.object({ reason: neededText('why', 500) });
export const nothingForm = z.object({});

export const offerForm = z.object({
  /** absent where the price has to stay under the repair of the job */
  repair: z.uuid({ error: 'Choose a repair of this model' }).optional(),
  reason: neededText('the reason, in words the customer can follow', 1000),
  onYes: optionalText(500),
  onNo: optionalText(500),
  furtherDays: z.coerce
    .number({ error: 'Enter whole working days' })
    .int('Enter whole working days')
    .min(0, 'Enter whole working days')
    .max(250, 'That is more than a year of work')
    .optional(),
  customerAsked: z.literal('yes').optional(),
});
