import type { Tx } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import type { Actor } from './actor';
import { createLink, createQuoteLink } from './private-link';
import { writeEvent } from './write-event';

/**
 * Withdraws every private link of a job and mails a new one to `to`. The page of a quote leads on to the job that came from it,
 * so that its links are withdrawn with the job's; its new one stands on the job's page.
 */
export async function writeNewLink(
  tx: Tx,
  o: { jobId: string; to: string; actor: Actor; now: Date; version?: number },
): Promise<void> {
  const { jobId, to, actor, now, version } = o;
  const event = { kind: 'link-renewed', data: {} } as const;
  await writeEvent(tx, { jobId, actor, now, event, ...(version !== undefined && { expected: { version } }) });
  const ended = await tx.privateLink.updateManyAndReturn({
    where: { OR: [{ jobId }, { quote: { jobId } }], revokedAt: null },
    data: { revokedAt: now },
    select: { quoteId: true },
  });
  await createLink(tx, jobId, now);
  for (const quoteId of new Set(ended.flatMap((link) => link.quoteId ?? []))) {
    await createQuoteLink(tx, quoteId, now);
  }
  await queueMail(tx, { template: 'link-renewed', data: {}, to, jobId, now });
}
