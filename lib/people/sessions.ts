import { db } from '@/lib/db/client';
import { IDLE_HOURS } from './rules/session-end';

/** A use is written down at most this often, so that reading pages costs no write each. */
const NOTED_EVERY_MINUTES = 5;

export type SessionRow = { id: string; createdAt: Date; lastUsedAt: Date; userAgent: string | null };

/**
 * Marks a session as used, and gives the use that it is counted from, or null where it was left alone for too long and is ended.
 * `now` is the machine's own time, by which the auth library dates and ends sessions, also where tests move the app's.
 */
export async function noteUse(session: { id: string; updatedAt: Date }, now: Date): Promise<Date | null> {
  const restedMs = now.getTime() - session.updatedAt.getTime();
  if (restedMs >= IDLE_HOURS * 3_600_000) {
    await db.session.deleteMany({ where: { id: session.id } });
    return null;
  }
  if (restedMs < NOTED_EVERY_MINUTES * 60_000) return session.updatedAt;
  await db.session.updateMany({ where: { id: session.id }, data: { updatedAt: now } });
  return now;
}

/** Which sessions still count: neither run out nor left alone for too long. `now` is the machine's own time. */
export function stillCounts(now: Date) {
  return {
    expiresAt: { gt: now },
    updatedAt: { gt: new Date(now.getTime() - IDLE_HOURS * 3_600_000) },
  };
}

/** Sessions of an account that still count, newest first. `now` is the machine's own time. */
export async function listSessions(userId: string, now: Date): Promise<SessionRow[]> {
  const rows = await db.session.findMany({
    where: { userId, ...stillCounts(now) },
    select: { id: true, createdAt: true, updatedAt: true, userAgent: true },
    orderBy: { createdAt: 'desc' },
  });
  return rows.map(({ updatedAt, ...row }) => ({ ...row, lastUsedAt: updatedAt }));
}

/** Ends every session of an account, this one included. */
export async function signOutEverywhere(userId: string): Promise<void> {
  await db.session.deleteMany({ where: { userId } });
}

/** Ends every session of an account but the present one. */
export async function endOtherSessions(userId: string, presentId: string): Promise<void> {
  await db.session.deleteMany({ where: { userId, id: { not: presentId } } });
}

/**
 * Carries out a change of how somebody signs in, and ends the sessions that the account had elsewhere before it
 * (ASVS 5.0, 7.4.3). The auth library may put a new session in the place of the present one on the way: that one stays.
 */
export async function endOthersAfter(
  who: { userId: string; sessionId: string },
  change: () => Promise<void>,
): Promise<void> {
  const others = await db.session.findMany({
    where: { userId: who.userId, id: { not: who.sessionId } },
    select: { id: true },
  });
  await change();
  await db.session.deleteMany({ where: { id: { in: others.map(({ id }) => id) } } });
}

/** Ends one session of an account; of somebody else's it ends none. */
export async function endSession(userId: string, sessionId: string): Promise<void> {
  await db.session.deleteMany({ where: { id: sessionId, userId } });
}
