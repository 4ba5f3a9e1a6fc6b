/** All minutes of work together. */
export function minutesOf(work: readonly { minutes: number }[]): number {
  return work.reduce((sum, entry) => sum + entry.minutes, 0);
}

/**
 * Minutes of work summed by who did it, most first, equals in the order they came.
 * Example: 30 by 'a', 10 by 'b', 15 by 'a' gives [{ userId: 'a', minutes: 45, entries: 2 }, { userId: 'b', minutes: 10, entries: 1 }].
 */
export function minutesByPerson(
  work: readonly { userId: string; minutes: number }[],
): { userId: string; minutes: number; entries: number }[] {
  const sums = new Map<string, { minutes: number; entries: number }>();
  for (const { userId, minutes } of work) {
    const before = sums.get(userId) ?? { minutes: 0, entries: 0 };
    sums.set(userId, { minutes: before.minutes + minutes, entries: before.entries + 1 });
  }
  return [...sums].map(([userId, sum]) => ({ userId, ...sum })).sort((a, b) => b.minutes - a.minutes);
}
