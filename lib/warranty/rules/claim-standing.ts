/** What a claim waits for. A contested ruling is gone until it is ruled again; the claim then waits for that. */
export const CLAIM_STANDINGS = [
  'to-rule',
  'second-look',
  'contested',
  'not-here',
  'ruled',
  'closed',
] as const;
export type ClaimStanding = (typeof CLAIM_STANDINGS)[number];

/**
 * Where a claim stands on the claims desk, from its stored state, ruling and contest.
 * Example: an open claim with a ruling of not-covered and no second look yet is 'second-look'.
 */
export function claimStanding(claim: {
  state: string;
  ruling: string | null;
  contestedAt: Date | null;
  job: { arrivedAt: Date | null };
}): ClaimStanding {
  if (claim.state === 'closed') return 'closed';
  if (claim.state === 'ruled') return 'ruled';
  if (claim.ruling !== null) return 'second-look';
  if (claim.contestedAt !== null) return 'contested';
  return claim.job.arrivedAt === null ? 'not-here' : 'to-rule';
}
