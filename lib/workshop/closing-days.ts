import { addDays, type Day, daysBetween, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { forgetCalendars } from './records';
import { type Closure, closureProblem } from './rules/closures';

/** Closes the workshop from one day through another; naming a day again changes why. */
export async function closeOn({ from, to, name }: Closure): Promise<void> {
  const problem = closureProblem({ from, to });
  if (problem) throw new Refusal('invalid', problem, 'to');
  await transaction(async (tx) => {
    for (let n = 0; n <= daysBetween(from, to); n++) {
      const stored = dayToDate(addDays(from, n));
      await tx.closingDay.upsert({ where: { day: stored }, create: { day: stored, name }, update: { name } });
    }
  });
  forgetCalendars();
}

/** Opens the workshop again from one day through another, on all days it was closed. */
export async function openOn({ from, to }: { from: Day; to: Day }): Promise<void> {
  await db.closingDay.deleteMany({ where: { day: { gte: dayToDate(from), lte: dayToDate(to) } } });
  forgetCalendars();
}
