import { type Day, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { readCalendar, readWorkshop } from '@/lib/workshop/records';
import { readBenchJobs } from './records';
import { ownDays } from './rules/bench-days';
import { type BenchJob, type PromiseAnswer, promiseFrom } from './rules/promise';

const MEMO_MILLISECONDS = 300_000;

type Bench = { jobs: readonly BenchJob[]; ownDaysOf: (job: BenchJob) => number };

let memo: { day: Day; until: number; bench: Promise<Bench> } | null = null;

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
  const settings = { calendar, capacityMinutesDay: workshop.capacityMinutesDay };
  if (memo?.day !== on || memo.until < Date.now()) {
    const bench = readBenchJobs({ zone: workshop.timeZone, now }).then((jobs): Bench => {
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
    memo = { day: on, until: Date.now() + MEMO_MILLISECONDS, bench };
    bench.catch(() => {
      memo = null;
    });
  }
  const { jobs, ownDaysOf } = await memo.bench;
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
