import { compareDays, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { factsOf } from '@/lib/jobs/facts';
import { isPromisedAnew } from '@/lib/jobs/rules/promise-to-come';
import { moveReason, promiseAfterWait } from '@/lib/promise/rules/after-wait';
import { readCalendar } from '@/lib/workshop/records';
import type { PartProps } from './part-props';

/** What a promise given before comes to when the answer is yes today; the wait itself is not counted in it. Null where the yes gives a day of its own. */
export async function promiseIfToday(
  job: PartProps['job'],
  workshop: PartProps['workshop'],
  furtherDays: number,
): Promise<string | null> {
  const asked = job.events.findLast((event) => event.toStage === 'awaiting-approval');
  if (!job.promisedOn || !asked || isPromisedAnew(factsOf(job))) return null;
  const endedOn = dayInZone(now(), workshop.timeZone);
  const { on } = promiseAfterWait(
    {
      promisedOn: dayFromDate(job.promisedOn),
      askedOn: dayInZone(asked.at, workshop.timeZone),
      endedOn,
      furtherDays,
    },
    await readCalendar(workshop, endedOn),
  );
  if (compareDays(on, endedOn) < 0) return null;
  const extra = furtherDays === 0 ? '' : ` ${moveReason({ waitedDays: 0, furtherDays })}`;
  return `With a yes today it is ready by ${formatDay(on, workshop.locale, 'weekday')}. The time we wait for your answer is not counted.${extra}`;
}
