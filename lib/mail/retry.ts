import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { requeue } from './queue';
import { MAY_GO_AGAIN } from './stored-standing';

/** A message that is sent again has to arrive: that its reader was told before says nothing of this time. */
const NOT_TOLD = { toldAt: null, toldById: null, toldNote: '' };

/**
 * Sends a message again by a person's wish: one that failed, that came back, that was kept for want of a mail server, or
 * that waits for its next try. A message that has left and did not come back, or is leaving now, is refused.
 */
export async function retryMail(mailId: string): Promise<void> {
  await transaction(async (tx) => {
    // A worker may take a waiting message at this moment: then no row is changed here, and the worker's try counts.
    const changed = await tx.mail.updateMany({
      where: { id: mailId, ...MAY_GO_AGAIN },
      data: { state: 'queued', lastError: null, bouncedAt: null, bounceNote: '', ...NOT_TOLD },
    });
    if (changed.count === 1) return requeue(tx, mailId);
    const mail = await tx.mail.findUnique({ where: { id: mailId }, select: { id: true } });
    if (!mail) throw new Refusal('not-found', 'There is no such message.');
    throw new Refusal('conflict', 'This message has left already, or is leaving now.');
  });
}
