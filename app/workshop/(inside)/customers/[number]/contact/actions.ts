'use server';
import type { FormState } from '@/app/ui/forms/form-state';
import { correctAsker } from '@/lib/keeping/correct-asker';
import { correctContact } from '@/lib/keeping/correct-contact';
import { onJob } from '../../../jobs/[number]/action-kit';
import { onQuote } from '../../../quotes/[number]/quote-kit';
import { askerForm, contactForm } from './schema';

export async function correct(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'take-in',
    number,
    schema: contactForm,
    formData,
    part: 'contact',
    work: ({ data: { newLink, ...contact }, ...call }) =>
      correctContact({ ...call, contact, newLink: newLink === 'yes' }),
  });
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
    work: async ({ data: { newLink, ...contact }, ...call }) => {
      await correctAsker({ ...call, contact, newLink: newLink === 'yes' });
      return null;
    },
  });
}
