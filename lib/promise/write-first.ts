import { type Day, dayInZone, dayToDate, maxDay } from '@/lib/calendar/day';
import { addWorkingDays } from '@/lib/calendar/working';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import type { JobRecord } from '@/lib/jobs/records';
import { writeEvent } from '@/lib/jobs/write-event';
import { readCalendar, type WorkshopCard } from '@/lib/workshop/records';
import { readBenchJobs } from './records';
import { readAim, shareOf } from './rules/aim';
import { promiseFor } from './rules/promise';

/**
 * Gives a job its first promise when its price is agreed, inside the caller's transaction: a parcel that came without a
 * booking has none before. Work does not start before `startsAfter`, and takes `furtherDays` working days beside the usual ones.
 */
export async function writeFirstPromise(
  tx: Tx,
  o: {
    job: Pick<JobRecord, 'id' | 'repair' | 'model'>;
    /** the last day on which the customer may withdraw, where work waits for it */
    startsAfter: Day | null;
    furtherDays: number;
    workshop: WorkshopCard;
    actor: Actor;
    now: Date;
  },
): Promise<void> {
  const { timeZone: zone, capacityMinutesDay, promiseAim } = o.workshop;
  const today = dayInZone(o.now, zone);
  const calendar = await readCalendar(o.workshop, today, tx);
  const { on } = promiseFor(
    {
      repairId: o.job.repair.id,
      familyId: o.job.model.familyId,
      statedDays: o.job.repair.workingDays,
      on: maxDay(today, o.startsAfter ?? today),
    },
    await readBenchJobs({ zone, now: o.now }, tx),
    { calendar, capacityMinutesDay, quantile: shareOf(readAim(promiseAim)) },
  );
  const to = o.furtherDays > 0 ? addWorkingDays(on, o.furtherDays, calendar) : on;
  await writeEvent(tx, {
    jobId: o.job.id,
    actor: o.actor,
    now: o.now,
    set: { promisedOn: dayToDate(to) },
    event: { kind: 'promise-moved', data: { from: null, to, reason: 'Given when the price was agreed' } },
  });
}
