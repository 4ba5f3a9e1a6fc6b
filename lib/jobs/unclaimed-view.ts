import { type Day, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { readWorkshop } from '@/lib/workshop/records';
import type { UnclaimedStep } from './rules/unclaimed';
import { lastDecision, type StoredDecision } from './stored-decision';
import { type NoticeMail, noticeMail, stepOfUnit, UNCLAIMED_FACTS } from './unclaimed-notices';

export type UnclaimedView = {
  sentOn: Day[];
  due: UnclaimedStep;
  decision: StoredDecision | null;
  notice: NoticeMail;
};

/** The notices about a unit, what is due next, and what the owner decided. */
export async function readUnclaimed(jobId: string, now: Date): Promise<UnclaimedView | null> {
  const job = await db.job.findUnique({ where: { id: jobId }, select: UNCLAIMED_FACTS });
  if (!job) return null;
  const workshop = await readWorkshop();
  return {
    sentOn: job.unclaimedNotices.map(({ at }) => dayInZone(at, workshop.timeZone)),
    due: stepOfUnit(job, workshop, dayInZone(now, workshop.timeZone)),
    decision: lastDecision(job.events),
    notice: noticeMail(job),
  };
}
