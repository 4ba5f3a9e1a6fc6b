import type { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { createLink, newestToken } from './private-link';
import { readStage } from './records';
import { FINAL_STAGES } from './rules/stages';

type Lost = {
  /** which jobs are meant, from what the person still has */
  where: Prisma.JobWhereInput[];
  isTheirs: (email: string) => boolean;
  /** jobs that a message leads to already */
  except: readonly string[];
  most: number;
  now: Date;
};

/** Queues the private link of jobs again, those that run before those that ended and the newest first, each to its own customer's address on file. */
export async function writeLinkCopies(tx: Tx, o: Lost): Promise<void> {
  if (o.where.length === 0 || o.most <= 0) return;
  const found = await tx.job.findMany({
    where: { OR: o.where, id: { notIn: [...o.except] }, customer: { erasedAt: null } },
    orderBy: { bookedAt: 'desc' },
    select: { id: true, stage: true, customer: { select: { email: true } } },
    take: 50,
  });
  const theirs = found.filter(({ customer }) => o.isTheirs(customer.email));
  // Those go on no further: their papers, what comes back and the way to write to us are on their page still.
  const hasEnded = ({ stage }: { stage: string }) => FINAL_STAGES.includes(readStage(stage));
  const inOrder = [...theirs.filter((job) => !hasEnded(job)), ...theirs.filter(hasEnded)];
  for (const { id, customer } of inOrder.slice(0, o.most)) {
    await ensureLink(tx, id, o.now);
    await queueMail(tx, { template: 'link-copy', data: {}, to: customer.email, jobId: id, now: o.now });
  }
}

/** The message carries the newest link that still opens the job; a job whose links were all withdrawn gets one. */
export async function ensureLink(tx: Tx, jobId: string, now: Date): Promise<void> {
  if ((await newestToken(tx, jobId)) === null) await createLink(tx, jobId, now);
}
