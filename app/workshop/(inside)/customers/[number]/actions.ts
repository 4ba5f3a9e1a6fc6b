'use server';
import { onlyPlain } from '@/app/only-plain';
import type { FormAction } from '@/app/ui/forms/form-state';
import { onForm } from '@/app/workshop/on-form';
import { erasePerson } from '@/lib/keeping/erase-person';
import { removalForm } from './schema';

export const removeData: FormAction<[number: string]> = async (number, _before, formData) => {
  onlyPlain(number);
  return onForm(formData, {
    permission: 'personal-data',
    schema: removalForm,
    work: ({ data, ...by }) => erasePerson({ number, isCoverConfirmed: data.cover === 'yes', ...by }),
    after: () => `/workshop/customers/${encodeURIComponent(number)}?removed=yes`,
  });
};
