import { dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { rememberFor } from '@/lib/remembered';
import { readCalendar, readWorkshop } from '@/lib/workshop/records';
import { readBenchJobs } from './records';
import { readAim, shareOf } from './rules/aim';
import { ownDays } from './rules/bench-days';
import { type BenchJob, type PromiseAnswer, promiseFrom } from './rules/promise';

type Bench = { jobs: readonly BenchJob[]; ownDaysOf: (job: BenchJob) => number };

const benches = rememberFor<Bench>(300_000);

/**
 * What would be promised for each of some repairs if its unit came today, by the repair's id; for the price list and the
 * booking. An id that is not in the catalogue is left out.
 *
 * Kept for five minutes per process: the finished jobs of a year are read and worked through once for all who look
 * at prices. The promise that counts is worked out anew when the unit arrives.
 */
export async function promisesToday(
  repairIds: readonly string[],
  now: Date,
): Promise<Map<string, PromiseAnswer>> {
  const workshop = await readWorkshop();
  const on = dayInZone(now, workshop.timeZone);
  const calendar = await readCalendar(workshop, on);
  const settings = {
    calendar,
    capacityMinutesDay: workshop.capacityMinutesDay,
    quantile: shareOf(readAim(workshop.promiseAim)),
  };
  const { jobs, ownDaysOf } = await benches.of(on, now, async (): Promise<Bench> => {
    const jobs = await readBenchJobs({ zone: workshop.timeZone, now });
    const known = new Map<BenchJob, number>();
    return {
      jobs,
      ownDaysOf(job) {
        const days = known.get(job) ?? ownDays(job, jobs, calendar, settings.capacityMinutesDay);
        known.set(job, days);
        return days;
      },
    };
  });
  const repairs = await db.repair.findMany({
    where: { id: { in: [...repairIds] } },
    select: { id: true, workingDays: true, model: { select: { familyId: true } } },
  });
  return new Map(
    repairs.map(({ id, workingDays, model }) => [
      id,
      promiseFrom(
        { repairId: id, familyId: model.familyId, statedDays: workingDays, on },
        jobs,
        ownDaysOf,
        settings,
      ),
    ]),
  );
}
