'use server';
import { onlyPlain, onlyPlainOrNew } from '@/app/only-plain';
import type { FormAction } from '@/app/ui/forms/form-state';
import { shownIn } from '@/app/ui/forms/shown-in';
import { onForm } from '@/app/workshop/on-form';
import { saveFamily } from '@/lib/catalogue/save-family';
import { saveModel } from '@/lib/catalogue/save-model';
import { saveRepair } from '@/lib/catalogue/save-repair';
import { familySchema } from './family-schema';
import { modelSchema } from './model-schema';
import { repairSchema } from './repair-schema';

/** Adds a family, or changes the one whose id is bound. */
export const saveFamilyAction: FormAction<[id: string | null]> = async (id, _before, formData) => {
  onlyPlainOrNew(id);
  return onForm(formData, {
    permission: 'catalogue',
    schema: familySchema,
    work: ({ data }) => saveFamily(shownIn(id, formData), data),
    after: () => '/workshop/catalogue?saved=yes',
  });
};

/** Adds a model, or changes the one whose id is bound, and shows it. */
export const saveModelAction: FormAction<[id: string | null]> = async (id, _before, formData) => {
  onlyPlainOrNew(id);
  return onForm(formData, {
    permission: 'catalogue',
    schema: modelSchema,
    work: ({ data }) => saveModel(shownIn(id, formData), data),
    after: (model) => `/workshop/catalogue/models/${model}?saved=yes`,
  });
};

/** Adds a repair to a model, or changes the one whose id is bound, and shows it. */
export const saveRepairAction: FormAction<[modelId: string, id: string | null]> = async (
  modelId,
  id,
  _before,
  formData,
) => {
  onlyPlain(modelId);
  onlyPlainOrNew(id);
  return onForm(formData, {
    permission: 'catalogue',
    schema: ({ currency }) => repairSchema(currency),
    work: ({ data, actor, now }) =>
      saveRepair(shownIn(id, formData), { ...data, modelId }, { now, userId: actor.id }),
    after: (repair) => `/workshop/catalogue/repairs/${repair}?saved=${id === null ? 'new' : 'yes'}`,
  });
};
