import { describePeriod } from '@/lib/calendar/period';

/**
 * Length of cover as the price list says it: '12 months on work and parts', 'work 30 days, parts 90 days', '6 months on parts'.
 * A repair without cover says 'no cover of its own'; rights by law stand beside it and are stated elsewhere.
 */
export function coverWords({
  workTerm,
  partsTerm,
}: {
  workTerm: string | null;
  partsTerm: string | null;
}): string {
  if (workTerm === null && partsTerm === null) return 'no cover of its own';
  if (workTerm === partsTerm) return `${describePeriod(workTerm ?? '')} on work and parts`;
  if (partsTerm === null) return `${describePeriod(workTerm ?? '')} on work`;
  if (workTerm === null) return `${describePeriod(partsTerm)} on parts`;
  return `work ${describePeriod(workTerm)}, parts ${describePeriod(partsTerm)}`;
}

/** The same in fewer words, where "cover" stands before it: '12 months', 'work 30 days, parts 90 days', 'none of its own'. */
export function coverInBrief(terms: { workTerm: string | null; partsTerm: string | null }): string {
  if (terms.workTerm === null && terms.partsTerm === null) return 'none of its own';
  return coverWords(terms).replace(' on work and parts', '');
}
