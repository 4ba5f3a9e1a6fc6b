import { Temporal } from 'temporal-polyfill';
import { addDays, dayInZone } from '@/lib/calendar/day';

/** When backups are made, as HH:MM on the workshop's wall clock. */
export type Night = { at: string; zone: string };

/** After its hour a backup may take so long, or be tried again, before it counts as missed. */
const PATIENCE = 3 * 3_600_000;
const AHEAD = 3_600_000;

/**
 * The last moment at which a backup was to be made, and the next. An hour that the clock skips counts as the hour after
 * it, and of an hour that comes twice the first counts, as RFC 5545 section 3.3.5 has it for local times.
 *
 * dueTimes(2026-11-25T10:00Z, { at: '03:00', zone: 'Europe/London' }) -> 2026-11-25T03:00Z and 2026-11-26T03:00Z
 */
export function dueTimes(now: Date, night: Night): { last: Date; next: Date } {
  const today = dayInZone(now, night.zone);
  const [before, on, after] = [-1, 0, 1].map((days) => {
    const local = Temporal.PlainDateTime.from(`${addDays(today, days)}T${night.at}`);
    return new Date(local.toZonedDateTime(night.zone, { disambiguation: 'compatible' }).epochMilliseconds);
  });
  if (!before || !on || !after) throw new RangeError('Three days have three nights');
  return on <= now ? { last: on, next: after } : { last: before, next: on };
}

/**
 * Whether a backup is to be made now: none was made since it was last due. One that says it was made in the future, by a
 * clock that has been set right since, is no reason to wait; a night that was slept through is made up for.
 */
export function isDue(now: Date, made: readonly Date[], night: Night): boolean {
  const { last } = dueTimes(now, night);
  return !made.some((at) => at >= last && at.getTime() <= now.getTime() + AHEAD);
}

export type Standing = 'fine' | 'none-yet' | 'missed';

/**
 * How the nightly backups stand. Missed: three hours after one was due there is still none since. A workshop that was opened
 * after that has none yet, and nobody is to blame.
 */
export function standingOf(o: {
  now: Date;
  made: readonly Date[];
  night: Night;
  openedAt: Date | null;
}): Standing {
  const judged = new Date(o.now.getTime() - PATIENCE);
  const { last } = dueTimes(judged, o.night);
  if (o.made.some((at) => at >= last && at.getTime() <= o.now.getTime() + AHEAD)) return 'fine';
  return o.openedAt === null || o.openedAt >= last ? 'none-yet' : 'missed';
}
