import type { Prisma } from '@/lib/db/generated/client';

/** `isInTrouble` as the database is asked for it (`rules/standing.ts`). */
export const IN_TROUBLE = {
  OR: [{ state: { in: ['failed', 'kept'] } }, { state: 'sent', bouncedAt: { not: null } }],
} satisfies Prisma.MailWhereInput;

/** `mayGoAgain` as the database is asked for it. */
export const MAY_GO_AGAIN = {
  OR: [{ state: 'queued' }, ...IN_TROUBLE.OR],
} satisfies Prisma.MailWhereInput;
