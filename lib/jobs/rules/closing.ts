/** Days after which a unit that was sent back counts as delivered at the earliest; common practice, no source. */
export const LEAST_DAYS = 14;

/**
 * Days after which one whose parcel usually travels at most `transitDays` working days does, of which a week has five: never while it
 * may still be on its way.
 *
 * closesAfter(5) -> 14; closesAfter(20) -> 28
 */
export function closesAfter(transitDays: number): number {
  return Math.max(LEAST_DAYS, Math.ceil((transitDays * 7) / 5));
}
