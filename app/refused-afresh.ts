import 'server-only';
import { refresh } from 'next/cache';
import type { FormState } from '@/app/ui/forms/form-state';
import { Refusal } from '@/lib/outcome';
import { refused } from './refused';

/**
 * A refusal on a page that stays open for days. Where the record changed meanwhile the page is made again, with script too:
 * what the form names of it would otherwise stay as it was, and every further press would be refused alike.
 */
export function refusedAfresh(refusal: Refusal, values?: FormState['values']): FormState {
  if (refusal.code !== 'conflict') return refused(refusal, values);
  refresh();
  // At a field the sentence itself says what changed.
  if (refusal.field) return refused(refusal, values);
  return refused(new Refusal(refusal.code, `${refusal.message} The page shows how it stands now.`), values);
}
