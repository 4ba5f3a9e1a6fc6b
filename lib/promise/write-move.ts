import { type Day, dayFromDate, dayInZone, dayToDate } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import type { JobRecord } from '@/lib/jobs/records';
import { writeEvent } from '@/lib/jobs/write-event';
import { readCalendar, type WorkshopCard } from '@/lib/workshop/records';
import {
  moveReason,
  type PromiseMove,
  type PromiseWait,
  promiseAfterWait,
  reopenReason,
} from './rules/after-wait';

/**
 * Moves the promise of a job that stops waiting for the customer's answer, or that was ready and is taken up again, inside the
 * caller's transaction. The job is given as it was while it waited. Null where nothing moves: no promise was made, or no working
 * day passed.
 */
export async function writePromiseMove(
  tx: Tx,
  o: {
    job: Pick<JobRecord, 'id' | 'promisedOn' | 'events'>;
    /** working days that what was agreed takes beside the work promised so far */
    furtherDays: number;
    waitedAs?: PromiseWait;
    /** the day the answer came; today where it is absent */
    endedOn?: Day;
    workshop: WorkshopCard;
    actor: Actor;
    now: Date;
  },
): Promise<PromiseMove | null> {
  const { waitedAs = 'awaiting-approval' } = o;
  const asked = o.job.events.findLast((event) => event.toStage === waitedAs);
  if (!o.job.promisedOn || !asked) return null;
  const zone = o.workshop.timeZone;
  const from = dayFromDate(o.job.promisedOn);
  const endedOn = o.endedOn ?? dayInZone(o.now, zone);
  const { furtherDays } = o;
  const { on, waitedDays } = promiseAfterWait(
    { promisedOn: from, askedOn: dayInZone(asked.at, zone), endedOn, furtherDays },
    await readCalendar(o.workshop, endedOn, tx),
  );
  if (on === from) return null;
  const moved = {
    from,
    to: on,
    reason: waitedAs === 'ready' ? reopenReason(waitedDays) : moveReason({ waitedDays, furtherDays }),
  };
  await writeEvent(tx, {
    jobId: o.job.id,
    actor: o.actor,
    now: o.now,
    set: { promisedOn: dayToDate(on) },
    event: { kind: 'promise-moved', data: moved },
  });
  return moved;
}
