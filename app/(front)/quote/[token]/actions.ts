'use server';
import { redirect } from 'next/navigation';
import { formPhotos, photoFormProblem } from '@/app/form-photos';
import { limitCaller } from '@/app/limit-caller';
import { refusedAfresh } from '@/app/refused-afresh';
import type { FormAction } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { waitSentence } from '@/app/ui/forms/wait-sentence';
import { readDraft } from '@/lib/jobs/draft';
import { nextStep } from '@/lib/jobs/rules/booking';
import { attempt } from '@/lib/outcome';
import { acceptAfterNo } from '@/lib/quotes/accept-after-no';
import { answerQuestion } from '@/lib/quotes/answer-question';
import { startBooking } from '@/lib/quotes/book-quote';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { MOST_PHOTOS } from '@/lib/quotes/rules/request-answers';
import { onQuoteLink } from './on-quote-link';
import { afterNoForm, answerForm, decisionForm } from './schema';

/** An answer to a question, or anything else the customer adds, with photos. */
export const answer: FormAction<[token: string]> = async (token, _before, formData) =>
  onQuoteLink(token, formData, async ({ quoteId, now }) => {
    const limit = await limitCaller(`quote-answer-${quoteId}`, { max: 20, windowSeconds: 3600 });
    if (!limit.allowed) return { message: waitSentence(limit.waitSeconds), values: typedValues(formData) };
    const { photos, kept, problem } = await formPhotos(formData, { most: MOST_PHOTOS, now });
    const values = { ...typedValues(formData), kept };
    const parsed = parseForm(answerForm, formData);
    const wrong = photoFormProblem(parsed, problem);
    if (!parsed.ok || wrong) return { ...wrong, values };
    const done = await attempt(() => answerQuestion({ quoteId, ...parsed.data, photos, now }));
    if (!done.ok) return refusedAfresh(done.refusal, values);
    redirect(`/quote/${token}?done=answered`);
  });

/** Yes or no to the price. */
export const decide: FormAction<[token: string]> = async (token, _before, formData) =>
  onQuoteLink(token, formData, async ({ quoteId, now }) => {
    const parsed = parseForm(decisionForm, formData);
    if (!parsed.ok) return parsed.state;
    const { revision, decision } = parsed.data;
    const done = await attempt(() => decideQuote({ quoteId, revision, decision, now }));
    if (!done.ok) return refusedAfresh(done.refusal);
    redirect(`/quote/${token}?done=${decision}`);
  });

/** Yes after all, to the price that was declined. */
export const sayYesAfterAll: FormAction<[token: string]> = async (token, _before, formData) =>
  onQuoteLink(token, formData, async (call) => {
    const parsed = parseForm(afterNoForm, formData);
    if (!parsed.ok) return parsed.state;
    const done = await attempt(() => acceptAfterNo({ ...call, ...parsed.data }));
    if (!done.ok) return refusedAfresh(done.refusal);
    redirect(`/quote/${token}?done=accepted`);
  });

/** On to the booking, at the first step that nothing is known of yet. */
export const goOnToBook: FormAction<[token: string]> = async (token, _before, formData) =>
  onQuoteLink(token, formData, async (call) => {
    const started = await attempt(() => startBooking(call));
    if (!started.ok) return refusedAfresh(started.refusal);
    const draft = await readDraft(started.value);
    redirect(`/book/${started.value}/${nextStep(draft?.answers ?? {})}`);
  });
