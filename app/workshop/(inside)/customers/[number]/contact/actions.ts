'use server';
import { redirect } from 'next/navigation';
import { onlyPlain } from '@/app/only-plain';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { jobRefused } from '@/app/workshop/job-refused';
import { senderOf } from '@/app/workshop/sender-of-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { now } from '@/lib/clock';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { correctAsker } from '@/lib/keeping/correct-asker';
import { correctContact } from '@/lib/keeping/correct-contact';
import { attempt } from '@/lib/outcome';
import { onQuote } from '../../../quotes/[number]/quote-kit';
import { askerForm, contactForm } from './schema';

export async function correct(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  onlyPlain(number);
  const sender = await senderOf('take-in', formData);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const job = await jobByNumber(number);
  if (!job) return { message: 'There is no job with this number.' };
  const parsed = parseForm(contactForm, formData);
  if (!parsed.ok) return parsed.state;
  const { version, newLink: ticked, ...contact } = parsed.data;
  const newLink = ticked === 'yes';
  const outcome = await attempt(() =>
    correctContact({ jobId: job.id, version, contact, newLink, actor: staffActor(staff), now: now() }),
  );
  if (!outcome.ok) {
    return jobRefused(outcome.refusal, { jobNumber: job.number, version, values: typedValues(formData) });
  }
  redirect(`/workshop/jobs/${job.number}?saved=contact`);
}

export async function correctWhoAsked(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onQuote({
    permission: 'take-in',
    number,
    schema: askerForm,
    formData,
    part: 'contact',
    work: async ({ data: { version: _, newLink, ...contact }, ...call }) => {
      await correctAsker({ ...call, contact, newLink: newLink === 'yes' });
      return null;
    },
  });
}
