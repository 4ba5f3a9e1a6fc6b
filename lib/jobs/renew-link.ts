import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import type { Actor } from './actor';
import { writeNewLink } from './write-new-link';

/**
 * Withdraws every private link of a job and sends the customer a new one. Names the version, so that a second press does not end the
 * link that the first one has just sent.
 */
export async function renewLink(o: {
  jobId: string;
  version: number;
  actor: Actor;
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    const job = await tx.job.findUnique({
      where: { id: o.jobId },
      select: { customer: { select: { email: true, erasedAt: true } } },
    });
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    if (job.customer.erasedAt) throw new Refusal('conflict', 'The data of this customer was removed.');
    await writeNewLink(tx, {
      jobId: o.jobId,
      to: job.customer.email,
      actor: o.actor,
      now: o.now,
      version: o.version,
    });
  });
}
