import { sameButForCapitals } from '@/lib/db/like';
import type { Tx } from '@/lib/db/transaction';
import type { MailTemplate } from '@/lib/mail/messages';
import { dropMail } from '@/lib/mail/queue';

/** Of these the booking has the message or the link. */
const GOES_ALONG: MailTemplate[] = [
  'message-from-workshop',
  'message-from-customer',
  'link-renewed',
  'link-copy',
];

/**
 * Letters of a job that was opened for the parcel of a booking, where they have not left, were given up or came back: those that say
 * something of what the booking has now go on as the booking's, the others speak of a job that is over and go to nobody. Answers
 * whether the customer, at the booking's address, was told by mail or some other way that the parcel came without a booking; a letter
 * that is leaving at this moment counts as one that they get.
 */
export async function letGoOfMail(
  tx: Tx,
  { openedId, bookingId, email }: { openedId: string; bookingId: string; email: string },
): Promise<boolean> {
  const told = await tx.mail.count({
    where: {
      jobId: openedId,
      template: 'unit-arrived',
      toAddress: sameButForCapitals(email),
      OR: [{ toldAt: { not: null } }, { state: { in: ['sending', 'sent'] }, bouncedAt: null }],
    },
  });
  const unread = {
    jobId: openedId,
    toldAt: null,
    OR: [{ state: { not: 'sent' } }, { bouncedAt: { not: null } }],
  };
  await tx.mail.updateMany({
    where: { ...unread, template: { in: GOES_ALONG } },
    data: { jobId: bookingId },
  });
  await dropMail(tx, unread);
  return told > 0;
}
