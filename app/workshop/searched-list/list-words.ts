import { soughtFrom } from '@/lib/jobs/rules/sought';
import { explainReading } from '@/lib/numbers/job-number';
import type { Listed } from './list-address';

type Lead = { listed: Listed; found: string; total: number; perPage: number; everything?: string };

/**
 * How many were found, of what, and which of them stand here.
 *
 * leadOf({ listed: { q: 'holt', page: 2, … }, found: '60 jobs', total: 60, perPage: 25 })
 *   -> '60 jobs for “holt”, here 26 to 50.'
 */
export function leadOf({ listed: { q, page }, found, total, perPage, everything = '' }: Lead): string {
  const which = q === '' ? everything : ` for “${q}”`;
  const first = (page - 1) * perPage + 1;
  if (total <= perPage || first > total) return `${found}${which}.`;
  return `${found}${which}, here ${first} to ${Math.min(first + perPage - 1, total)}.`;
}

/** What is said of a search for a number, a part of one, or a text that found nothing. */
export function emptySentence(q: string, say: { nothing: string; number: string; text: string }): string {
  const sought = soughtFrom(q);
  if (sought.kind !== 'text') return say[sought.kind];
  if (sought.wrong === 'check' || sought.wrong === 'character') return explainReading(sought.wrong);
  return say.text;
}
