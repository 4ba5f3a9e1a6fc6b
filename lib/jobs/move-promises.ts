import type { Day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { attempt, type Refusal } from '@/lib/outcome';
import type { ByStaff } from './actor';
import { movePromise } from './move-promise';

export type PromiseMove = { number: string; version: number; to: Day };
export type NotMoved = { number: string; refusal: Refusal };

/**
 * Moves several promises for one reason and tells each customer. Each is a move of its own with its event and its mail, so that one job
 * that somebody changed meanwhile does not hold back the others; gives the numbers that were moved, and why the rest was not.
 * A number that no job has is left out.
 */
export async function movePromises(
  o: ByStaff & { moves: readonly PromiseMove[]; reason: string },
): Promise<{ moved: string[]; notMoved: NotMoved[] }> {
  const jobs = await db.job.findMany({
    where: { number: { in: o.moves.map(({ number }) => number) } },
    select: { id: true, number: true },
  });
  const moved: string[] = [];
  const notMoved: NotMoved[] = [];
  for (const { number, version, to } of o.moves) {
    const job = jobs.find((each) => each.number === number);
    if (!job) continue;
    const { reason, actor, now } = o;
    const outcome = await attempt(() => movePromise({ jobId: job.id, version, to, reason, actor, now }));
    if (outcome.ok) moved.push(number);
    else notMoved.push({ number, refusal: outcome.refusal });
  }
  return { moved, notMoved };
}
