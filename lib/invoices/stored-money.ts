import type { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';

/** What of a job says where its money stands. */
export const MONEY_OF_JOB = {
  number: true,
  stage: true,
  customer: { select: { email: true } },
  quotes: {
    select: {
      currency: true,
      revisions: { select: { state: true, grossMinor: true, revision: true, decidedBy: true } },
    },
  },
  invoices: { select: { kind: true, payableMinor: true } },
  payments: { select: { amountMinor: true, purpose: true } },
} satisfies Prisma.JobSelect;

export function moneyOfJob(
  tx: Tx,
  jobId: string,
): Promise<Prisma.JobGetPayload<{ select: typeof MONEY_OF_JOB }> | null> {
  return tx.job.findUnique({ where: { id: jobId }, select: MONEY_OF_JOB });
}
