/**
 * Whether the price that stands was agreed to. The first one of a unit that came without a booking was written by staff and is
 * nobody's yes; what stands after a no, a withdrawal or a repair that was given up follows from the terms.
 */
export function isAgreedTo(standing: { revision: number; decidedBy: string | null } | undefined): boolean {
  return standing !== undefined && (standing.decidedBy === 'customer' || standing.revision > 1);
}
