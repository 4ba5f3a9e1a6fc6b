import { type Day, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { readWorkshop } from '@/lib/workshop/records';
import { lastDecision, type OwnerDecision } from './rules/decision';
import type { UnclaimedStep } from './rules/unclaimed';
import { type NoticeMail, noticeMail, stepOfUnit } from './rules/unclaimed-unit';
import { UNCLAIMED_FACTS } from './stored-unclaimed';

export type UnclaimedView = {
  sentOn: Day[];
  due: UnclaimedStep;
  decision: OwnerDecision | null;
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
