'use server';
import type { FormState } from '@/app/ui/forms/form-state';
import { typedValues } from '@/app/ui/forms/typed-values';
import { onForm } from '@/app/workshop/on-form';
import { movePromises, type NotMoved } from '@/lib/jobs/move-promises';
import { showNumber } from '@/lib/numbers/job-number';
import { fieldsOf, promisesForm } from './moves-schema';

export async function moveSeveral(_before: FormState, formData: FormData): Promise<FormState> {
  return onForm({
    permission: 'take-in',
    formData,
    schema: promisesForm,
    work: ({ data, ...call }) => movePromises({ ...call, ...data }),
    after: ({ moved, notMoved }) =>
      notMoved.length === 0
        ? { done: `${movedWords(moved.length)}.` }
        : { ...problems(notMoved, moved.length), values: left(notMoved, formData) },
  });
}

/** What was refused for its day stands at that day; a job that changed may have left the list. */
function problems(notMoved: readonly NotMoved[], moved: number): FormState {
  const errors: Record<string, string[]> = {};
  const changed: string[] = [];
  for (const { number, refusal } of notMoved) {
    if (refusal.code === 'invalid') errors[fieldsOf(number).to] = [refusal.message];
    else changed.push(showNumber(number));
  }
  const sentences = [
    ...(moved > 0 ? [`${movedWords(moved)}, but not all.`] : []),
    ...(changed.length > 0
      ? [
          `Changed meanwhile, so look at ${changed.length === 1 ? 'it' : 'them'} first: ${changed.join(', ')}.`,
        ]
      : []),
  ];
  return { errors, message: sentences.join(' ') || undefined };
}

/** What was typed for the rows that stay. */
function left(notMoved: readonly NotMoved[], formData: FormData): FormState['values'] {
  const kept = new Set([
    'reason',
    ...notMoved.flatMap(({ number }) => [fieldsOf(number).tick, fieldsOf(number).to]),
  ]);
  return Object.fromEntries(Object.entries(typedValues(formData)).filter(([name]) => kept.has(name)));
}

const movedWords = (moved: number) =>
  moved === 1
    ? '1 promise is moved and its customer told'
    : `${moved} promises are moved and their customers told`;
