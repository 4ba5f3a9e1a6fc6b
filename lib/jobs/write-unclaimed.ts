import { type Day, dayInZone } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import type { WorkshopCard } from '@/lib/workshop/records';
import { lastDayOf, type UnclaimedSettings } from './rules/unclaimed';

export function unclaimedSettings(workshop: WorkshopCard): UnclaimedSettings {
  return {
    afterDays: workshop.unclaimedAfterDays,
    everyDays: workshop.unclaimedEveryDays,
    notices: workshop.unclaimedNotices,
  };
}

export type WrittenNotice = { notice: number; lastDay: Day };

/**
 * Keeps a notice and queues its letter, inside the caller's transaction.
 *
 * Two instances may find the same notice due at once. Its number is part of the row's primary key: the second insert
 * fails, and nothing of the second transaction is kept, its letter included.
 */
export async function writeNotice(
  tx: Tx,
  o: { jobId: string; email: string; notice: number; workshop: WorkshopCard; now: Date },
): Promise<WrittenNotice> {
  const { jobId, notice, workshop, now } = o;
  const settings = unclaimedSettings(workshop);
  const lastDay = lastDayOf(dayInZone(now, workshop.timeZone), settings);
  await tx.unclaimedNotice.create({ data: { jobId, notice, at: now } });
  await queueMail(tx, {
    template: 'unclaimed-notice',
    data: {
      notice,
      lastDay,
      ...(notice >= settings.notices && { isLast: true }),
      ...(workshop.storageText !== '' && { storage: workshop.storageText }),
    },
    to: o.email,
    jobId,
    now,
  });
  return { notice, lastDay };
}
