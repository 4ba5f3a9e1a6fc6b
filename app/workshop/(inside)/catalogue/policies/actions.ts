'use server';
import { onlyPlain, onlyPlainOrNew } from '@/app/only-plain';
import type { FormAction } from '@/app/ui/forms/form-state';
import { shownIn } from '@/app/ui/forms/shown-in';
import { onForm } from '@/app/workshop/on-form';
import { retirePolicy } from '@/lib/catalogue/retire-policy';
import { savePolicyVersion } from '@/lib/catalogue/save-policy-version';
import { policySchema, retireSchema } from './policy-schema';

/** Writes a new policy, or the next version of the one whose id is bound. */
export const savePolicyAction: FormAction<[id: string | null]> = async (id, _before, formData) => {
  onlyPlainOrNew(id);
  return onForm(formData, {
    permission: 'catalogue',
    schema: policySchema,
    work: ({ data, now }) => savePolicyVersion({ ...data, shown: shownIn(id, formData), now }),
    after: ({ policyId }) => `/workshop/catalogue/policies/${policyId}?saved=yes`,
  });
};

/** Takes the bound policy out of the choice for repairs, or puts it back. */
export const retirePolicyAction: FormAction<[id: string]> = async (id, _before, formData) => {
  onlyPlain(id);
  return onForm(formData, {
    permission: 'catalogue',
    schema: retireSchema,
    work: ({ data, now }) => retirePolicy({ id, isRetired: data.retire, now }),
    after: () => '/workshop/catalogue/policies',
  });
};
