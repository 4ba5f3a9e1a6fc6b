'use server';
import { redirect } from 'next/navigation';
import { onlyPlainOrNew } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { shownIn } from '@/app/ui/forms/shown-in';
import { typedValues } from '@/app/ui/forms/typed-values';
import { onForm } from '@/app/workshop/on-form';
import { senderOf } from '@/app/workshop/sender-of-form';
import { keptMoneySentence, readKeptMoney } from '@/lib/money/read-kept-money';
import { attempt } from '@/lib/outcome';
import { saveCarrier } from '@/lib/parcels/save-carrier';
import { readWorkshop } from '@/lib/workshop/records';
import { saveSettings } from '@/lib/workshop/save-settings';
import { carrierForm, customsForm } from './carrier-schema';

/** Adds a carrier, or changes the one whose id is bound. */
export async function keepCarrier(
  id: string | null,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlainOrNew(id);
  const sender = await senderOf('settings', formData);
  if (!sender.ok) return sender.state;
  const parsed = parseForm(carrierForm, formData);
  if (!parsed.ok) return parsed.state;
  const { valueUpTo, ...input } = parsed.data;
  const values = typedValues(formData);
  const { currency } = await readWorkshop();
  const value = readKeptMoney(valueUpTo, currency);
  if (!value.ok || value.minor < 0) {
    const reason = value.ok ? 'format' : value.reason;
    return {
      errors: { valueUpTo: [keptMoneySentence(reason, currency, 'Enter an amount, like 500.00')] },
      values,
    };
  }
  const outcome = await attempt(() =>
    saveCarrier(shownIn(id, formData), { ...input, maxValueMinor: value.minor }),
  );
  if (!outcome.ok) return refused(outcome.refusal, values);
  redirect('/workshop/settings/carriers?saved=carrier');
}

/** Keeps the countries that need no customs note. */
export async function keepCustomsFree(_before: FormState, formData: FormData): Promise<FormState> {
  return onForm({
    permission: 'settings',
    formData,
    schema: customsForm,
    work: ({ data: { customsFree, seenAt } }) => saveSettings({ customsFree }, seenAt),
    after: () => '/workshop/settings/carriers?saved=customs',
  });
}
