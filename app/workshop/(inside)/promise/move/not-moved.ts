import type { FormState } from '@/app/ui/forms/form-state';
import type { NotMoved } from '@/lib/jobs/move-promises';
import { showNumber } from '@/lib/numbers/job-number';
import type { RefusalCode } from '@/lib/outcome';
import { fieldsOf } from './moves-schema';

const CHANGED: readonly RefusalCode[] = ['conflict', 'not-found'];

/**
 * What was refused for its day stands at that day. A job that changed is named, since it may have left the list, and so is one that was
 * refused for anything else, with the sentence of the refusal.
 */
export function problems(notMoved: readonly NotMoved[], moved: number): FormState {
  const errors: Record<string, string[]> = {};
  const changed: string[] = [];
  const others: string[] = [];
  for (const { number, refusal } of notMoved) {
    if (refusal.code === 'invalid') errors[fieldsOf(number).to] = [refusal.message];
    else if (CHANGED.includes(refusal.code)) changed.push(showNumber(number));
    else others.push(`${showNumber(number)}: ${refusal.message}`);
  }
  const sentences = [
    ...(moved > 0 ? [`${movedWords(moved)}, but not all.`] : []),
    ...(changed.length > 0
      ? [
          `Changed meanwhile, so look at ${changed.length === 1 ? 'it' : 'them'} first: ${changed.join(', ')}.`,
        ]
      : []),
    ...others,
  ];
  return { errors, message: sentences.join(' ') || undefined };
}

/** `1 promise is moved and its customer told` */
export const movedWords = (moved: number) =>
  moved === 1
    ? '1 promise is moved and its customer told'
    : `${moved} promises are moved and their customers told`;
