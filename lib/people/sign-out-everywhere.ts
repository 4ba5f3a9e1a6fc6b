import { db } from '@/lib/db/client';

/** Ends every session of an account, this one included. */
export async function signOutEverywhere(userId: string): Promise<void> {
  await db.session.deleteMany({ where: { userId } });
}

/** Ends one session of an account; of somebody else's it ends none. */
export async function endSession(userId: string, sessionId: string): Promise<void> {
  await db.session.deleteMany({ where: { id: sessionId, userId } });
}
