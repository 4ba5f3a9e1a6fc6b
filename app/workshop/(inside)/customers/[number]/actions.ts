'use server';
import { onlyPlain } from '@/app/only-plain';
import type { FormState } from '@/app/ui/forms/form-state';
import { onForm } from '@/app/workshop/on-form';
import { erasePerson } from '@/lib/keeping/erase-person';
import { removalForm } from './schema';

export async function removeData(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  onlyPlain(number);
  return onForm({
    permission: 'personal-data',
    formData,
    schema: removalForm,
    work: ({ data, ...by }) => erasePerson({ number, isCoverConfirmed: data.cover === 'yes', ...by }),
    after: () => `/workshop/customers/${encodeURIComponent(number)}?removed=yes`,
  });
}
