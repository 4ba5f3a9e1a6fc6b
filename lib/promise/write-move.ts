import { type Day, dayFromDate, dayInZone, dayToDate } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import type { JobRecord } from '@/lib/jobs/records';
import { writeEvent } from '@/lib/jobs/write-event';
import { readCalendar, type WorkshopCard } from '@/lib/workshop/records';
import {
  lateReason,
  moveReason,
  type PromiseMove,
  type PromiseWait,
  promiseAfterLapse,
  promiseAfterWait,
  reopenReason,
  type Wait,
} from './rules/after-wait';
import { promisedBeforeLapse } from './rules/before-lapse';

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
    /** where the wait began; `declined` after a no whose price had lapsed before, so that its own days are counted */
    waitedAs?: PromiseWait | 'declined';
    /**
     * the answer had been given before its price lapsed, and is written down now; heardOn: the day it was known of, null where that is
     * no earlier than now
     */
    late?: { heardOn: Day | null } | undefined;
    /** the day the answer came; today where it is absent */
    endedOn?: Day;
    workshop: WorkshopCard;
    actor: Actor;
    now: Date;
  },
): Promise<PromiseMove | null> {
  const { waitedAs = 'awaiting-approval', late } = o;
  const asked = o.job.events.findLast((event) => event.toStage === waitedAs);
  if (!o.job.promisedOn || !asked) return null;
  const zone = o.workshop.timeZone;
  const today = dayInZone(o.now, zone);
  const from = dayFromDate(o.job.promisedOn);
  const endedOn = o.endedOn ?? today;
  const { furtherDays } = o;
  const wait = { promisedOn: from, askedOn: dayInZone(asked.at, zone), furtherDays };
  const calendar = await readCalendar(o.workshop, endedOn, tx);
  const { on, reason } = late
    ? afterLapse({ ...wait, ...late, lapsedFrom: promisedBeforeLapse(o.job.events, from), today }, calendar)
    : afterWait({ ...wait, endedOn }, waitedAs, calendar);
  if (on === from) return null;
  const moved = { from, to: on, reason };
  await writeEvent(tx, {
    jobId: o.job.id,
    actor: o.actor,
    now: o.now,
    set: { promisedOn: dayToDate(on) },
    event: { kind: 'promise-moved', data: moved },
  });
  return moved;
}

function afterWait(wait: Wait, waitedAs: PromiseWait | 'declined', calendar: WorkingCalendar) {
  const { on, waitedDays } = promiseAfterWait(wait, calendar);
  const { furtherDays } = wait;
  return {
    on,
    reason:
      waitedAs === 'ready' ? reopenReason(waitedDays, furtherDays) : moveReason({ waitedDays, furtherDays }),
  };
}

function afterLapse(wait: Parameters<typeof promiseAfterLapse>[0], calendar: WorkingCalendar) {
  const { on, ...counted } = promiseAfterLapse(wait, calendar);
  return { on, reason: lateReason({ ...counted, furtherDays: wait.furtherDays }) };
}
