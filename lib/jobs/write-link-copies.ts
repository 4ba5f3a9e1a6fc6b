import type { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { createLink, newestToken } from './private-link';

/** Jobs that go on no further; the way to their papers is a certificate. */
const ENDED = ['closed', 'cancelled'];

type Lost = {
  /** which jobs are meant, from what the person still has */
  where: Prisma.JobWhereInput[];
  isTheirs: (email: string) => boolean;
  /** jobs that a message leads to already */
  except: readonly string[];
  most: number;
  now: Date;
};

/** Queues the private link of running jobs again, newest first, each to its own customer's address on file. */
export async function writeLinkCopies(tx: Tx, o: Lost): Promise<void> {
  if (o.where.length === 0 || o.most <= 0) return;
  const found = await tx.job.findMany({
    where: { OR: o.where, stage: { notIn: ENDED }, id: { notIn: [...o.except] } },
    orderBy: { bookedAt: 'desc' },
    select: { id: true, customer: { select: { email: true } } },
    take: 50,
  });
  const theirs = found.filter(({ customer }) => o.isTheirs(customer.email));
  for (const { id, customer } of theirs.slice(0, o.most)) {
    await ensureLink(tx, id, o.now);
    await queueMail(tx, { template: 'link-copy', data: {}, to: customer.email, jobId: id, now: o.now });
  }
}

/** The message carries the newest link that still opens the job; a job whose links were all withdrawn gets one. */
export async function ensureLink(tx: Tx, jobId: string, now: Date): Promise<void> {
  if ((await newestToken(tx, jobId)) === null) await createLink(tx, jobId, now);
}
