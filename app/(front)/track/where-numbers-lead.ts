import type { NumberKind } from '@/lib/numbers/job-number';

/** What is said of a number that opens nothing by itself: what it is of, and where its private link is. */
export const WHERE_NUMBERS_LEAD: Record<Extract<NumberKind, 'Q' | 'C'>, string> = {
  Q: 'This is the number of a quote. Open it by the private link in our e-mail; it gets a job number when you book.',
  C: 'This is the number of a claim. Open it by the private link in our e-mail, or type the number of its job, which starts with J and stands on the packing slip.',
};
