import type { Day } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import type { Tx } from '@/lib/db/transaction';
import { readCalendar, type WorkshopCard } from '@/lib/workshop/records';
import { coverEnd } from './rules/cover';
import type { CoverLine, HeldInterval, PolicyTerms } from './rules/terms';

/** Working days around today and at the end of each of these lines, however long ago or far off that is. */
export function coverCalendar(
  cover: {
    lines: readonly CoverLine[];
    held: readonly HeldInterval[];
    terms: Pick<PolicyTerms, 'heldRule'>;
  },
  o: { workshop: Pick<WorkshopCard, 'holidayCountry' | 'holidayRegion'>; today: Day },
  client?: Tx,
): Promise<WorkingCalendar> {
  const ends = cover.lines.map((line) => coverEnd(line, cover.held, cover.terms));
  return readCalendar(o.workshop, o.today, client, ends);
}
