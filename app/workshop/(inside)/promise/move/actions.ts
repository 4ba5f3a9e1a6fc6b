'use server';
import type { FormAction, FormState } from '@/app/ui/forms/form-state';
import { typedValues } from '@/app/ui/forms/typed-values';
import { onForm } from '@/app/workshop/on-form';
import { movePromises, type NotMoved } from '@/lib/jobs/move-promises';
import { fieldsOf, promisesForm } from './moves-schema';
import { movedWords, problems } from './not-moved';

export const moveSeveral: FormAction = async (_before, formData) =>
  onForm(formData, {
    permission: 'take-in',
    schema: promisesForm,
    work: ({ data, ...call }) => movePromises({ ...call, ...data }),
    after: ({ moved, notMoved }) =>
      notMoved.length === 0
        ? { done: `${movedWords(moved.length)}.` }
        : { ...problems(notMoved, moved.length), values: left(notMoved, formData) },
  });

/** What was typed for the rows that stay. */
function left(notMoved: readonly NotMoved[], formData: FormData): FormState['values'] {
  const kept = new Set([
    'reason',
    ...notMoved.flatMap(({ number }) => [fieldsOf(number).tick, fieldsOf(number).to]),
  ]);
  return Object.fromEntries(Object.entries(typedValues(formData)).filter(([name]) => kept.has(name)));
}
