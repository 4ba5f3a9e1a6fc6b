import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { IN_TROUBLE } from './stored-standing';

/**
 * Keeps that the reader of a message that did not reach them was told some other way, and how: it needs no hand any more. The
 * message stays as it is and can still be sent again. A second time changes nothing.
 */
export async function markTold(o: {
  mailId: string;
  note: string;
  actor: { id: string };
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    const { count } = await tx.mail.updateMany({
      where: { id: o.mailId, toldAt: null, ...IN_TROUBLE },
      data: { toldAt: o.now, toldById: o.actor.id, toldNote: o.note },
    });
    if (count === 1) return;
    const mail = await tx.mail.findUnique({ where: { id: o.mailId }, select: { toldAt: true } });
    if (!mail) throw new Refusal('not-found', 'There is no such message.');
    if (!mail.toldAt) throw new Refusal('conflict', 'This message has left already, or is leaving now.');
  });
}
