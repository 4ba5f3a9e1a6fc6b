'use server';
import { onlyPlain } from '@/app/only-plain';
import type { FormAction } from '@/app/ui/forms/form-state';
import { NOTHING_TYPED, onForm } from '@/app/workshop/on-form';
import { putUsualPart, removeUsualPart } from '@/lib/catalogue/usual-parts';
import { partSchema } from './schema';

/** Adds a part to those the repair usually needs, or changes its number of pieces. */
export const putPartAction: FormAction<[repairId: string]> = async (repairId, _before, formData) => {
  onlyPlain(repairId);
  return onForm(formData, {
    permission: 'catalogue',
    schema: partSchema,
    work: ({ data }) => putUsualPart({ repairId, ...data }),
    after: () => `/workshop/catalogue/repairs/${repairId}?saved=part#parts`,
  });
};

/** Takes a part off those the repair usually needs. */
export const removePartAction: FormAction<[repairId: string, partId: string]> = async (
  repairId,
  partId,
  _before,
  formData,
) => {
  onlyPlain(repairId, partId);
  return onForm(formData, {
    permission: 'catalogue',
    schema: NOTHING_TYPED,
    work: () => removeUsualPart({ repairId, partId }),
    after: () => `/workshop/catalogue/repairs/${repairId}?saved=part#parts`,
  });
};
