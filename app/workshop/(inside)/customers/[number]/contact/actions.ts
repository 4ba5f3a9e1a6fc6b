'use server';
import type { FormAction } from '@/app/ui/forms/form-state';
import { correctAsker } from '@/lib/keeping/correct-asker';
import { correctContact } from '@/lib/keeping/correct-contact';
import { onJob } from '../../../jobs/[number]/action-kit';
import { onQuote } from '../../../quotes/[number]/quote-kit';
import { askerForm, contactForm } from './schema';

export const correct: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'take-in',
    schema: contactForm,
    part: 'contact',
    work: ({ data: { newLink, ...contact }, ...call }) =>
      correctContact({ ...call, contact, newLink: newLink === 'yes' }),
  });

export const correctWhoAsked: FormAction<[number: string]> = async (number, _before, formData) =>
  onQuote(number, formData, {
    permission: 'take-in',
    schema: askerForm,
    part: 'contact',
    work: ({ data: { newLink, ...contact }, ...call }) =>
      correctAsker({ ...call, contact, newLink: newLink === 'yes' }),
  });
