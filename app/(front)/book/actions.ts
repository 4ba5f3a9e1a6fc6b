'use server';
import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import { limitCaller } from '@/app/limit-caller';
import { onlyPlain } from '@/app/only-plain';
import type { FormAction, FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { waitSentence } from '@/app/ui/forms/wait-sentence';
import { now } from '@/lib/clock';
import { book } from '@/lib/jobs/book';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { readDraft, saveStep, startDraft } from '@/lib/jobs/draft';
import { addressAnswers } from '@/lib/jobs/rules/address';
import {
  type BookingStep,
  confirmAnswers,
  nextStep,
  parcelForm,
  problemAnswers,
  unitAnswers,
} from '@/lib/jobs/rules/booking';
import { batteryAnswer, postedAnswer } from '@/lib/jobs/rules/posted-answer';
import { recalledCellsOf } from '@/lib/jobs/stored-recall';
import { attempt } from '@/lib/outcome';
import { startForm } from './schema';

/** More than a person books in an hour, fewer than a program would. */
const BOOKINGS_AN_HOUR = 30;

export const startBooking: FormAction = async (_before, formData) => {
  const parsed = parseForm(startForm, formData);
  if (!parsed.ok) return parsed.state;
  const limit = await limitCaller('book', { max: BOOKINGS_AN_HOUR, windowSeconds: 3600 });
  if (!limit.allowed) return { message: waitSentence(limit.waitSeconds) };
  const started = await attempt(() => startDraft({ repairId: parsed.data.repair, now: now() }));
  if (!started.ok) return { message: started.refusal.message };
  redirect(`/book/${started.value}/unit`);
};

export const saveUnit: FormAction<[draft: string]> = async (draft, _before, formData) => {
  onlyPlain(draft);
  const parsed = parseForm(unitAnswers, formData);
  if (!parsed.ok) return parsed.state;
  return goOn(draft, () => saveStep({ token: draft, step: 'unit', answers: parsed.data, now: now() }));
};

export const saveProblem: FormAction<[draft: string]> = async (draft, _before, formData) => {
  onlyPlain(draft);
  const parsed = parseForm(problemAnswers, formData, ['history']);
  if (!parsed.ok) return parsed.state;
  return goOn(draft, () => saveStep({ token: draft, step: 'problem', answers: parsed.data, now: now() }));
};

/**
 * A battery that must not be posted stops the booking here. The answers are kept all the same: they take the place of
 * earlier ones that would let it pass, and are there again for whoever chose wrongly.
 */
export const saveParcel: FormAction<[draft: string]> = async (draft, _before, formData) => {
  onlyPlain(draft);
  const found = await readDraft(draft);
  const repair = found ? await readBookingRepair(found.repairId, found.quoteId) : null;
  if (!repair) return { message: 'This booking was not found. Start again from the price list.' };
  if (repair.model.battery === 'none') formData.set('battery', 'none');
  const parsed = parseForm(parcelForm, formData, ['accessories']);
  if (!parsed.ok) return parsed.state;
  const saved = await attempt(() =>
    saveStep({ token: draft, step: 'parcel', answers: parsed.data, now: now() }),
  );
  if (!saved.ok) return { message: saved.refusal.message };
  const { battery } = parsed.data;
  const cells = await recalledCellsOf({ modelId: repair.model.id, serial: saved.value.unit?.serial });
  if (postedAnswer(repair.model, battery, cells).may === 'do-not-post') {
    redirect(`/book/${draft}/battery?answer=${batteryAnswer(repair.model, battery)}`);
  }
  redirect(`/book/${draft}/${nextStep(saved.value)}`);
};

export const saveAddress: FormAction<[draft: string]> = async (draft, _before, formData) => {
  onlyPlain(draft);
  const parsed = parseForm(addressAnswers, formData);
  if (!parsed.ok) return parsed.state;
  return goOn(draft, () => saveStep({ token: draft, step: 'address', answers: parsed.data, now: now() }));
};

export const confirmBooking: FormAction<[draft: string]> = async (draft, _before, formData) => {
  onlyPlain(draft);
  const parsed = parseForm(confirmAnswers, formData);
  if (!parsed.ok) return parsed.state;
  const { shownMinor, shownReturnFee, shownCover, shownTerms, start } = parsed.data;
  const booked = await attempt(() =>
    book({
      draftToken: draft,
      shownMinor,
      shownTerms: { returnFeeMinor: shownReturnFee, policyVersionId: shownCover, termsId: shownTerms },
      isStartAsked: start === 'yes',
      now: now(),
    }),
  );
  if (!booked.ok) {
    const { code, message } = booked.refusal;
    if (code !== 'conflict') return { message };
    // The page is made again with what is offered now, with script too.
    refresh();
    return { conflict: { message, changes: [] }, values: typedValues(formData) };
  }
  redirect(`/job/${booked.value.token}?booked=yes`);
};

async function goOn(draft: string, save: () => Promise<Parameters<typeof nextStep>[0]>): Promise<FormState> {
  const saved = await attempt(save);
  if (!saved.ok) return { message: saved.refusal.message };
  const next: BookingStep = nextStep(saved.value);
  redirect(`/book/${draft}/${next}`);
}
