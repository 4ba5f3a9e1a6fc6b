'use server';
import { redirect } from 'next/navigation';
import { onlyPlain, onlyPlainOrNew } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormAction } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { NOTHING_TYPED, onForm } from '@/app/workshop/on-form';
import { readPinTable } from '@/lib/bench/rules/read-pin-table';
import { retirePinTable, savePinTable } from '@/lib/bench/save-pin-table';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { senderOf } from '../../../sender-of-form';
import { pinTableSchema } from './pin-table-schema';

/** Shows what a pasted table gives, or keeps it; one that replaces another retires that one. */
export const pinTableAction: FormAction<[replaces: string | null]> = async (replaces, _before, formData) => {
  onlyPlainOrNew(replaces);
  const sender = await senderOf('catalogue', formData);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const parsed = parseForm(pinTableSchema, formData);
  if (!parsed.ok) return parsed.state;
  const values = typedValues(formData);
  const { problems } = readPinTable(parsed.data.text);
  const [first] = problems;
  if (first) {
    const more = problems.length > 1 ? ` ${problems.length - 1} more below.` : '';
    return { errors: { text: [`Line ${first.line}: ${first.message}${more}`] }, values };
  }
  if (formData.get('then') !== 'keep') return { done: 'This is what it gives. Nothing is kept yet.', values };
  const outcome = await attempt(() =>
    savePinTable({ input: parsed.data, replaces, userId: staff.id, now: now() }),
  );
  if (!outcome.ok) return refused(outcome.refusal, values);
  redirect(`/workshop/catalogue/pin-tables/${outcome.value}?saved=yes`);
};

/** Takes the bound table out of the choice for new checks. */
export const retireAction: FormAction<[id: string]> = async (id, _before, formData) => {
  onlyPlain(id);
  return onForm(formData, {
    permission: 'catalogue',
    schema: NOTHING_TYPED,
    work: ({ now }) => retirePinTable({ id, now }),
    after: () => '/workshop/catalogue/pin-tables?saved=yes',
  });
};
