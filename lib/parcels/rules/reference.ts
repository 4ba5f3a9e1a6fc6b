import { checkS10 } from '@/lib/numbers/s10';

/**
 * What is wrong with a carrier reference, as a sentence; null where nothing can be told. One that looks like a postal reference
 * is checked by its check digit (UPU S10); others pass unchecked, and it is said that they do.
 *
 * referenceProblem('RR473124828GB') -> 'This looks like …'; referenceProblem('TT-2201') -> null
 */
export function referenceProblem(reference: string): string | null {
  const reading = checkS10(reference);
  return reading.form === 's10' && !reading.valid
    ? 'This looks like a postal reference, and one character looks wrong. Check it against the receipt.'
    : null;
}

/** Of a reference that is kept: no check digit of it is known, so that a slip in it looks as good as the right one. False for ''. */
export function isUnchecked(reference: string): boolean {
  return reference !== '' && checkS10(reference).form === 'other';
}
