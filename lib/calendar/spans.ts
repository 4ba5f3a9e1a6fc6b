/** Twenty-four hours of the world's clock in milliseconds: the length of a day where no zone is asked. */
export const DAY_MS = 86_400_000;

/** The instant so many times 24 hours before another: for terms of housekeeping, never for a day that somebody was told (day.ts has those). */
export function instantDaysBefore(at: Date, days: number): Date {
  return new Date(at.getTime() - days * DAY_MS);
}

/** The instant so many times 24 hours after another; as with instantDaysBefore, not a calendar day. */
export function instantDaysAfter(at: Date, days: number): Date {
  return instantDaysBefore(at, -days);
}
