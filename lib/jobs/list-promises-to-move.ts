import { plannedMinutes } from '@/lib/bench/rules/job-sheets';
import { minutesOf } from '@/lib/bench/rules/minutes-by';
import { type Day, dayInZone } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import { type OpenPromise, type PromiseToMove, promisesToMove } from '@/lib/promise/rules/promises-to-move';
import { readCalendar, type WorkshopCard } from '@/lib/workshop/records';
import { COUNTS, PROMISED, readStage, standingPromise } from './records';
import { partsWait } from './rules/awaited-parts';
import { BEFORE_READY } from './rules/stage-sets';
import type { Stage } from './rules/stages';
import { minutesLeft } from './rules/today';
import { AWAITED_PARTS, awaitedPartsOf } from './stored-awaited-parts';

/** A promise with what its form has to name: `version` is the job's as it was read. */
export type ListedPromise = OpenPromise & {
  number: string;
  version: number;
  stage: Stage;
  unit: string;
  customer: string;
};

/**
 * Promises that will not be kept as they stand, oldest first. A unit whose customer is asked is left out: the answer moves its day
 * by itself; so is one whose repair is not to come. `today` is the day they were looked at.
 */
export async function listPromisesToMove(
  workshop: WorkshopCard,
  now: Date,
): Promise<{ today: Day; toMove: PromiseToMove<ListedPromise>[] }> {
  const { timeZone, capacityMinutesDay } = workshop;
  const today = dayInZone(now, timeZone);
  const [rows, calendar] = await Promise.all([
    db.job.findMany({
      where: { stage: { in: [...BEFORE_READY] }, promisedOn: { not: null } },
      orderBy: [{ arrivedAt: 'asc' }, { id: 'asc' }],
      select: {
        ...PROMISED,
        number: true,
        version: true,
        arrivedAt: true,
        bookedAt: true,
        model: { select: { maker: true, name: true } },
        repair: { select: { minutes: true } },
        besides: { select: { sheet: { select: { repair: { select: { minutes: true } } } } } },
        customer: { select: { name: true } },
        awaitedParts: AWAITED_PARTS,
        work: { where: COUNTS, select: { minutes: true } },
      },
    }),
    readCalendar(workshop, today),
  ]);
  const open = rows.flatMap((row): ListedPromise[] => {
    const promisedOn = standingPromise(row);
    if (!promisedOn) return [];
    const stage = readStage(row.stage);
    return [
      {
        number: row.number,
        version: row.version,
        stage,
        promisedOn,
        arrivedOn: dayInZone(row.arrivedAt ?? row.bookedAt, timeZone),
        partOn: partsWait(awaitedPartsOf(row), today)?.expectedOn ?? null,
        minutesLeft: minutesLeft({
          stage,
          minutesPlanned: plannedMinutes(row),
          minutesWorked: minutesOf(row.work),
        }),
        unit: unitName(row.model),
        customer: row.customer.name,
      },
    ];
  });
  return { today, toMove: promisesToMove(open, { today, capacityMinutesDay, calendar }) };
}
