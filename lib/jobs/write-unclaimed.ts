import { type Day, dayInZone } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import type { WorkshopCard } from '@/lib/workshop/records';
import type { Actor } from './actor';
import { moveOf } from './rules/stages';
import { lastDayOf } from './rules/unclaimed';
import { unclaimedSettings } from './rules/unclaimed-unit';
import { writeEvent } from './write-event';

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

/**
 * Paying or writing to us is an answer: the unit waits to go back, and the notices begin anew should it be set aside once more.
 * The caller has locked the job and seen it unclaimed; `note` says what the answer was.
 */
export async function takeUpAnswered(
  tx: Tx,
  o: { jobId: string; note: string; actor: Actor; now: Date },
): Promise<void> {
  const { from, to } = moveOf('take-up-again');
  await writeEvent(tx, {
    ...o,
    expected: { stages: from },
    from: 'unclaimed',
    to,
    event: { kind: 'moved', data: { move: 'take-up-again', note: o.note } },
  });
  await tx.unclaimedNotice.deleteMany({ where: { jobId: o.jobId } });
}
