import { addDays, type Day, dayInZone, isoWeekday } from '@/lib/calendar/day';

/** How many days, weeks and months keep their newest backup. */
export type Keep = { days: number; weeks: number; months: number };

/** A clock that was set back leaves backups from times to come; one hour allows for clocks of two machines. */
const AHEAD = 3_600_000;

/**
 * Which nightly backups may go: all that are the newest of none of the last `days` days, `weeks` ISO weeks or `months`
 * months that have one, counted in the zone. Days without a backup are not counted, so a workshop that was shut for a month
 * loses nothing. The newest never goes, and neither does one that says it was made in the future.
 *
 * Grandfather, father and son: common practice, no source.
 *
 * outdated([tonight, thisMorning, yesterday], { days: 1, weeks: 0, months: 0 }, …) -> [thisMorning, yesterday]
 */
export function outdated(made: readonly Date[], keep: Keep, o: { zone: string; now: Date }): Date[] {
  const past = made
    .filter((at) => at.getTime() <= o.now.getTime() + AHEAD)
    .toSorted((a, b) => b.getTime() - a.getTime());
  const kept = new Set<Date>(past.slice(0, 1));
  const spans: [number, (d: Day) => string][] = [
    [keep.days, (d) => d],
    [keep.weeks, (d) => addDays(d, 1 - isoWeekday(d))],
    [keep.months, (d) => d.slice(0, 7)],
  ];
  for (const [most, spanOf] of spans) {
    const seen = new Set<string>();
    for (const at of past) {
      const span = spanOf(dayInZone(at, o.zone));
      if (seen.has(span)) continue;
      if (seen.size === most) break;
      seen.add(span);
      kept.add(at);
    }
  }
  return past.filter((at) => !kept.has(at));
}
