import { transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import type { Actor } from './actor';
import { createLink } from './private-link';
import { writeEvent } from './write-event';

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
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      event: { kind: 'link-renewed', data: {} },
      expected: { version: o.version },
    });
    await tx.privateLink.updateMany({
      where: { jobId: o.jobId, revokedAt: null },
      data: { revokedAt: o.now },
    });
    await createLink(tx, o.jobId, o.now);
    await queueMail(tx, {
      template: 'link-renewed',
      data: {},
      to: job.customer.email,
      jobId: o.jobId,
      now: o.now,
    });
  });
}
