'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { limitCaller } from '@/app/limit-caller';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { waitSentence } from '@/app/ui/forms/wait-sentence';
import { now } from '@/lib/clock';
import { moveJob } from '@/lib/jobs/move';
import { nameParcel } from '@/lib/jobs/name-parcel';
import { findJobByToken } from '@/lib/jobs/private-link';
import { sendMessage } from '@/lib/jobs/send-message';
import { attempt } from '@/lib/outcome';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { contestRuling } from '@/lib/warranty/contest-ruling';

const GONE: FormState = { message: 'This link opens no job any more. Use the newest link we sent you.' };

async function jobIdOf(token: string): Promise<string | null> {
  return (await findJobByToken(token))?.jobId ?? null;
}

const decisionForm = z.object({
  revision: z.coerce.number().int().positive(),
  decision: z.enum(['accepted', 'declined'], { error: 'Choose yes or no' }),
  agreedText: z.string().max(1000),
});

export async function decide(token: string, _before: FormState, formData: FormData): Promise<FormState> {
  const jobId = await jobIdOf(token);
  if (!jobId) return GONE;
  const parsed = parseForm(decisionForm, formData);
  if (!parsed.ok) return parsed.state;
  const decided = await attempt(() =>
    decideOffer({ jobId, ...parsed.data, actor: { kind: 'customer' }, now: now() }),
  );
  if (!decided.ok) return { message: decided.refusal.message };
  redirect(`/job/${token}?done=${decided.value}` as Route);
}

const messageForm = z.object({
  text: z
    .string({ error: 'Write your message' })
    .trim()
    .min(1, 'Write your message')
    .max(4000, 'Keep your message to 4,000 characters'),
});

export async function writeMessage(
  token: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  const jobId = await jobIdOf(token);
  if (!jobId) return GONE;
  const parsed = parseForm(messageForm, formData);
  if (!parsed.ok) return parsed.state;
  const limit = await limitCaller(`message-${jobId}`, { max: 20, windowSeconds: 3600 });
  if (!limit.allowed) return { message: waitSentence(limit.waitSeconds), values: parsed.data };
  const sent = await attempt(() =>
    sendMessage({ jobId, text: parsed.data.text, actor: { kind: 'customer' }, now: now() }),
  );
  if (!sent.ok) return { message: sent.refusal.message, values: parsed.data };
  redirect(`/job/${token}?done=message#messages` as Route);
}

const parcelForm = z.object({
  reference: z
    .string({ error: 'Enter the number on the receipt' })
    .trim()
    .min(1, 'Enter the number on the receipt')
    .max(60, 'Keep this to 60 characters'),
});

export async function giveReference(
  token: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  const jobId = await jobIdOf(token);
  if (!jobId) return GONE;
  const parsed = parseForm(parcelForm, formData);
  if (!parsed.ok) return parsed.state;
  const named = await attempt(() => nameParcel({ jobId, reference: parsed.data.reference, now: now() }));
  if (!named.ok) return { errors: { reference: [named.refusal.message] }, values: parsed.data };
  redirect(`/job/${token}?done=reference` as Route);
}

const versionForm = z.object({ version: z.coerce.number().int().positive() });

export async function cancelBooking(
  token: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  const jobId = await jobIdOf(token);
  if (!jobId) return GONE;
  const parsed = parseForm(versionForm, formData);
  if (!parsed.ok) return parsed.state;
  const moved = await attempt(() =>
    moveJob({
      jobId,
      version: parsed.data.version,
      move: 'cancel',
      note: 'Cancelled by the customer',
      actor: { kind: 'customer' },
      now: now(),
    }),
  );
  if (!moved.ok) return { message: `${moved.refusal.message} Load the page again to see where it stands.` };
  redirect(`/job/${token}?done=cancelled` as Route);
}

const contestForm = z.object({
  text: z
    .string({ error: 'Tell us how you see it' })
    .trim()
    .min(1, 'Tell us how you see it')
    .max(4000, 'Keep this to 4,000 characters'),
});

export async function contest(token: string, _before: FormState, formData: FormData): Promise<FormState> {
  const jobId = await jobIdOf(token);
  if (!jobId) return GONE;
  const parsed = parseForm(contestForm, formData);
  if (!parsed.ok) return parsed.state;
  const contested = await attempt(() => contestRuling({ jobId, text: parsed.data.text, now: now() }));
  if (!contested.ok) return { message: contested.refusal.message, values: parsed.data };
  redirect(`/job/${token}?done=contested` as Route);
}
