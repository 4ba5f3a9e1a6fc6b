import { addDays, type Day, daysBetween, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { BEFORE_READY } from '@/lib/jobs/rules/stage-sets';
import { Refusal } from '@/lib/outcome';
import { forgetCalendars } from './records';
import { type Closure, closureProblem } from './rules/closures';

/**
 * Closes the workshop from one day through another; naming a day again changes why. Gives how many units that wait on us are
 * promised for one of these days: those promises stand until somebody moves them.
 */
export async function closeOn({ from, to, name }: Closure): Promise<number> {
  const problem = closureProblem({ from, to });
  if (problem) throw new Refusal('invalid', problem, 'to');
  const hit = await transaction(async (tx) => {
    for (let n = 0; n <= daysBetween(from, to); n++) {
      const stored = dayToDate(addDays(from, n));
      await tx.closingDay.upsert({ where: { day: stored }, create: { day: stored, name }, update: { name } });
    }
    return tx.job.count({
      where: {
        stage: { in: [...BEFORE_READY] },
        promisedOn: { gte: dayToDate(from), lte: dayToDate(to) },
      },
    });
  });
  forgetCalendars();
  return hit;
}

/** Opens the workshop again from one day through another, on all days it was closed. */
export async function openOn({ from, to }: { from: Day; to: Day }): Promise<void> {
  await db.closingDay.deleteMany({ where: { day: { gte: dayToDate(from), lte: dayToDate(to) } } });
  forgetCalendars();
}
