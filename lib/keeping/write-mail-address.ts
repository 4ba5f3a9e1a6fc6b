import type { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';

/** Gives letters that have not left, were given up or came back a new address; those that arrived keep theirs. */
export async function readdressMail(
  tx: Tx,
  o: { of: Prisma.MailWhereInput; from: readonly string[]; to: string },
): Promise<void> {
  await tx.mail.updateMany({
    where: {
      toAddress: { in: [...o.from] },
      AND: [o.of, { OR: [{ state: { in: ['queued', 'failed', 'kept'] } }, { bouncedAt: { not: null } }] }],
    },
    data: { toAddress: o.to },
  });
}
