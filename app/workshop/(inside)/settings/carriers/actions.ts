'use server';
import { onlyPlainOrNew } from '@/app/only-plain';
import type { FormAction } from '@/app/ui/forms/form-state';
import { shownIn } from '@/app/ui/forms/shown-in';
import { onForm } from '@/app/workshop/on-form';
import { saveCarrier } from '@/lib/parcels/save-carrier';
import { saveSettings } from '@/lib/workshop/save-settings';
import { carrierSchema, customsForm } from './carrier-schema';

/** Adds a carrier, or changes the one whose id is bound. */
export const keepCarrier: FormAction<[id: string | null]> = async (id, _before, formData) => {
  onlyPlainOrNew(id);
  return onForm(formData, {
    permission: 'settings',
    schema: ({ currency }) => carrierSchema(currency),
    work: ({ data }) => saveCarrier(shownIn(id, formData), data),
    after: () => '/workshop/settings/carriers?saved=carrier',
  });
};

/** Keeps the countries that need no customs note. */
export const keepCustomsFree: FormAction = async (_before, formData) =>
  onForm(formData, {
    permission: 'settings',
    schema: customsForm,
    work: ({ data: { customsFree, seenAt } }) => saveSettings({ customsFree }, seenAt),
    after: () => '/workshop/settings/carriers?saved=customs',
  });
