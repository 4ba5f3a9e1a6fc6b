import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';

/**
 * Keeps that a message came back, with what the other mail server said, told by the person who found it in the mailbox.
 * The message was taken by our own server, so nothing here could have known. A second time changes nothing.
 */
export async function markBounced(o: { mailId: string; note: string; now: Date }): Promise<void> {
  await transaction(async (tx) => {
    const { count } = await tx.mail.updateMany({
      where: { id: o.mailId, state: 'sent', bouncedAt: null },
      data: { bouncedAt: o.now, bounceNote: o.note },
    });
    if (count === 1) return;
    const mail = await tx.mail.findUnique({
      where: { id: o.mailId },
      select: { state: true, bouncedAt: true },
    });
    if (!mail) throw new Refusal('not-found', 'There is no such message.');
    if (mail.bouncedAt) return;
    throw new Refusal('conflict', 'Only a message that has left can come back.');
  });
}
