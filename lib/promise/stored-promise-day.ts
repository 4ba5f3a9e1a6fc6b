import { type Day, dayInZone, maxDay } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { readCalendar, readWorkshop } from '@/lib/workshop/records';
import { readBenchJobs } from './records';
import { readAim, shareOf } from './rules/aim';
import { type PromiseAnswer, promiseFor } from './rules/promise';

/**
 * The day to promise for a unit with a repair that arrives now, from the workshop's own jobs, or from the days of the quote it was
 * booked at. Inside a transaction pass its client; the arriving job itself should not be marked as arrived yet, or it stands in its
 * own queue.
 */
export async function promiseDay(
  o: {
    repairId: string;
    quotedDays?: number | null;
    /** work does not start before the end of this day */
    waitsUntil?: Day | null;
    now: Date;
  },
  client: Tx = db,
): Promise<PromiseAnswer> {
  const repair = await client.repair.findUnique({
    where: { id: o.repairId },
    select: { workingDays: true, model: { select: { familyId: true } } },
  });
  if (!repair) throw new Refusal('not-found', 'This repair is no longer in the catalogue.');
  const workshop = await readWorkshop(client);
  const today = dayInZone(o.now, workshop.timeZone);
  const calendar = await readCalendar(workshop, today, client);
  const jobs = await readBenchJobs({ zone: workshop.timeZone, now: o.now }, client);
  const asked = {
    repairId: o.repairId,
    familyId: repair.model.familyId,
    statedDays: repair.workingDays,
    quotedDays: o.quotedDays ?? null,
    on: maxDay(today, o.waitsUntil ?? today),
  };
  return promiseFor(asked, jobs, {
    calendar,
    capacityMinutesDay: workshop.capacityMinutesDay,
    quantile: shareOf(readAim(workshop.promiseAim)),
  });
}
