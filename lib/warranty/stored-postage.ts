import type { Prisma } from '@/lib/db/generated/client';
import { type PostageStanding, postageStanding } from './rules/postage';
import { paysPostage } from './stored-ruling';

/** What of a claim's row its postage is read from. */
export const POSTAGE_OF_CLAIM = {
  number: true,
  cause: true,
  ruling: true,
  secondLookAt: true,
  postageState: true,
  postageMinor: true,
  postageAskedAt: true,
} satisfies Prisma.ClaimSelect;

type PostageRow = Parameters<typeof paysPostage>[0] & { postageState: string | null };

/** Where the postage of a claim stands, from its row; nothing is due on a job without one. */
export function readPostageStanding(claim: PostageRow | null): PostageStanding {
  return claim === null
    ? 'not-due'
    : postageStanding({ state: claim.postageState, isPaidBack: paysPostage(claim) });
}
