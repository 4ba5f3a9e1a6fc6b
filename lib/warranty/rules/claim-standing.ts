/**
 * What a claim waits for. A contested ruling is gone until it is ruled again; the claim then waits for that. One that the owner took
 * back after the contest was answered waits for a ruling as any other.
 */
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
 * Where a claim stands on the claims desk, from its stored state, ruling and contest, and when the owner last took a ruling back.
 * Example: an open claim with a ruling of not-covered and no second look yet is 'second-look'.
 */
export function claimStanding(claim: {
  state: string;
  ruling: string | null;
  contestedAt: Date | null;
  reopenedAt: Date | null;
  job: { arrivedAt: Date | null };
}): ClaimStanding {
  if (claim.state === 'closed') return 'closed';
  if (claim.state === 'ruled') return 'ruled';
  if (claim.ruling !== null) return 'second-look';
  if (isContestOpen(claim)) return 'contested';
  return claim.job.arrivedAt === null ? 'not-here' : 'to-rule';
}

function isContestOpen(o: { contestedAt: Date | null; reopenedAt: Date | null }): boolean {
  return o.contestedAt !== null && (o.reopenedAt === null || o.contestedAt > o.reopenedAt);
}
