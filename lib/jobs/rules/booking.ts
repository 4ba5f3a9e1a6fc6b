import { z } from 'zod';
import { LIMITS } from '@/lib/catalogue/rules/list-limits';
import { LARGEST_KEPT } from '@/lib/numbers/column';
import { LOOSE_BATTERY, namesLooseBattery } from '@/lib/parcels/rules/loose-battery';
import { addressAnswers } from './address';
import { neededText, optionalText } from './typed-text';

/**
 * What a booking asks, in the order it asks it. One group a page; every group can be sent again and replaces its own
 * answers only.
 */
export const BOOKING_STEPS = ['unit', 'problem', 'parcel', 'address', 'confirm'] as const;
export type BookingStep = (typeof BOOKING_STEPS)[number];

export const HISTORY = {
  dropped: 'It was dropped or knocked',
  liquid: 'Liquid got in',
  opened: 'It was opened or repaired before',
} as const;
export type HistoryKey = keyof typeof HISTORY;

/** What was ticked of it, in the order it is asked: ['liquid', 'dropped'] -> 'It was dropped or knocked. Liquid got in.' */
export function historyWords(ticked: readonly string[]): string {
  return Object.entries(HISTORY)
    .filter(([key]) => ticked.includes(key))
    .map(([, words]) => `${words}.`)
    .join(' ');
}

export const unitAnswers = z.object({
  serial: neededText('the serial number from the unit', 60).regex(
    /[A-Za-z0-9]/,
    'A serial number has letters or digits. Enter it as printed on the unit',
  ),
});

export const problemAnswers = z.object({
  problem: neededText('what is wrong', 2000),
  history: z.array(z.enum(['dropped', 'liquid', 'opened'])).default([]),
});

export const parcelAnswers = z.object({
  accessories: z.array(z.string().trim().min(1).max(LIMITS.entry)).max(LIMITS.entries).default([]),
  otherAccessory: optionalText(80),
  battery: z.string({ error: 'Choose the answer that fits the battery' }).min(1).max(40),
  data: z.enum(['none', 'saved', 'not-saved'], {
    error: 'Choose what applies to your recordings and settings',
  }),
});

/** The same as it is typed: what an older draft holds stays readable. */
export const parcelForm = parcelAnswers.extend({
  otherAccessory: optionalText(80).refine((text) => !namesLooseBattery(text), LOOSE_BATTERY),
});

export const confirmAnswers = z.object({
  /** the price that was shown, with tax, minor units; carried by the form, since nobody agrees to another */
  shownMinor: z.coerce.number().int().min(0).max(LARGEST_KEPT),
  /** the return fee and the terms of cover that were shown with it, and the terms of the workshop that were linked */
  shownReturnFee: z.coerce.number().int().min(0).max(LARGEST_KEPT),
  shownCover: z.string().min(1).max(60),
  shownTerms: z.string().max(60),
  terms: z.literal('yes', { error: 'Tick the box to agree to the terms' }),
  /** the wish that work starts before the right to withdraw ends; never ticked beforehand (Directive 2011/83/EU Art. 8(8)) */
  start: z.literal('yes').optional(),
});

export const STEP_SCHEMAS = {
  unit: unitAnswers,
  problem: problemAnswers,
  parcel: parcelForm,
  address: addressAnswers,
  confirm: confirmAnswers,
} satisfies Record<BookingStep, z.ZodType>;

/** Answers kept so far; a step that was not reached yet is absent. */
export const draftAnswers = z.object({
  unit: unitAnswers.optional(),
  problem: problemAnswers.optional(),
  parcel: parcelAnswers.optional(),
  address: addressAnswers.optional(),
});
export type DraftAnswers = z.output<typeof draftAnswers>;

export type FullAnswers = { [Step in keyof DraftAnswers]-?: NonNullable<DraftAnswers[Step]> };

/** The first step that still has to be answered; 'confirm' when only the agreement is left. */
export function nextStep(answers: DraftAnswers): BookingStep {
  for (const step of BOOKING_STEPS) {
    if (step === 'confirm' || answers[step] === undefined) return step;
  }
  return 'confirm';
}

export function isStep(text: string): text is BookingStep {
  return (BOOKING_STEPS as readonly string[]).includes(text);
}

/** All answers, or null while a step is missing. */
export function fullAnswers(answers: DraftAnswers): FullAnswers | null {
  const { unit, problem, parcel, address } = answers;
  return unit && problem && parcel && address ? { unit, problem, parcel, address } : null;
}

type DataChoice = z.output<typeof parcelAnswers>['data'];

/** The data question, in the customer's words. */
export const DATA_ANSWERS = {
  none: 'There is nothing on it that I need',
  saved: 'I have saved a copy of what I need',
  'not-saved': 'There are things on it that I have no copy of',
} as const satisfies Record<DataChoice, string>;

export const DATA_QUESTION = {
  label: 'Your recordings and settings',
  hint: 'We may have to reset the unit to test it. What is on it can be lost.',
  choices: Object.entries(DATA_ANSWERS).map(([value, label]) => ({ value, label })),
};

/** Kept where nobody put the question to the customer: no answer of theirs is made up. */
export const DATA_NOT_ASKED = 'not-asked';

export type DataAnswer = DataChoice | typeof DATA_NOT_ASKED;

/** For the bench; null for a word that is not kept. dataWords('not-asked') -> 'Not asked: treat it as not saved' */
export function dataWords(kept: string): string | null {
  if (kept === DATA_NOT_ASKED) return 'Not asked: treat it as not saved';
  return kept in DATA_ANSWERS ? DATA_ANSWERS[kept as keyof typeof DATA_ANSWERS] : null;
}

/** Everything told to be in the parcel, each once, in the order told. */
export function toldAccessories(parcel: z.output<typeof parcelAnswers>): string[] {
  const all = [...parcel.accessories, parcel.otherAccessory]
    .map((name) => name.trim())
    .filter((name) => name !== '');
  return [...new Set(all)];
}
