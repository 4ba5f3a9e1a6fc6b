import { dayInZone } from '@/lib/calendar/day';
import type { WorkshopCard } from '@/lib/workshop/card';
import type { CoverClock } from './cover-sql';

/** What every figure of this room is counted by: the workshop's today, and what an hour at its bench costs. */
export function coverClock(workshop: WorkshopCard, now: Date): CoverClock {
  return { today: dayInZone(now, workshop.timeZone), labourRateMinor: workshop.labourRateMinor };
}
