'use server';
import { onlyPlain } from '@/app/only-plain';
import type { FormState } from '@/app/ui/forms/form-state';
import { NOTHING_TYPED, onForm } from '@/app/workshop/on-form';
import { putUsualPart, removeUsualPart } from '@/lib/catalogue/usual-parts';
import { partSchema } from './schema';

/** Adds a part to those the repair usually needs, or changes its number of pieces. */
export async function putPartAction(
  repairId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(repairId);
  return onForm({
    permission: 'catalogue',
    formData,
    schema: partSchema,
    work: ({ data }) => putUsualPart({ repairId, ...data }),
    after: () => `/workshop/catalogue/repairs/${repairId}?saved=part#parts`,
  });
}

/** Takes a part off those the repair usually needs. */
export async function removePartAction(
  repairId: string,
  partId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(repairId, partId);
  return onForm({
    permission: 'catalogue',
    formData,
    schema: NOTHING_TYPED,
    work: () => removeUsualPart({ repairId, partId }),
    after: () => `/workshop/catalogue/repairs/${repairId}?saved=part#parts`,
  });
}
