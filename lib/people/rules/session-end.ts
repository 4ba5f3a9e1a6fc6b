/** A session ends after this long without a click (ASVS 5.0, 7.3.1): longer than a repair at the bench with the screen left alone. */
export const IDLE_HOURS = 4;

/** From so long before the end it is said on the page: long enough to finish a sentence and come back from the bench. */
const SAID_BEFORE_S = 10 * 60;
/** Meanwhile it is looked up again this often, since another tab may have kept the session going. */
const LOOKED_UP_EVERY_S = 60;

export type SessionTimes = { expiresAt: Date; updatedAt: Date };
export type SessionEnd = { at: Date; isLast: boolean };

/**
 * When a session ends if nothing more is clicked. `isLast`: a click does not put it off, because it is as old as one may get.
 *
 * sessionEnd({ updatedAt: 09:00, expiresAt: 20:00 }) -> { at: 13:00, isLast: false }
 */
export function sessionEnd({ expiresAt, updatedAt }: SessionTimes): SessionEnd {
  const idle = new Date(updatedAt.getTime() + IDLE_HOURS * 3_600_000);
  return expiresAt <= idle ? { at: expiresAt, isLast: true } : { at: idle, isLast: false };
}

/** Whether the end is so near that the page says so; `secondsLeft` until it. */
export function isEndNear(secondsLeft: number): boolean {
  return secondsLeft <= SAID_BEFORE_S;
}

/** After how many seconds a page looks again how long is left: nextLook(14_400) is 13_800, nextLook(20) is 21. */
export function nextLook(secondsLeft: number): number {
  if (!isEndNear(secondsLeft)) return secondsLeft - SAID_BEFORE_S;
  return Math.max(1, Math.min(LOOKED_UP_EVERY_S, secondsLeft + 1));
}
