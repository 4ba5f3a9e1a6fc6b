import { now } from '@/lib/clock';
import { db } from '@/lib/db/client';

export type Standing = {
  mail: { state: string; count: number }[];
  /** of the message that has waited longest, in seconds; 0 when none waits */
  oldestMailSeconds: number;
  jobs: { stage: string; count: number }[];
};

/** How many messages and jobs stand where. */
export async function readStanding(): Promise<Standing> {
  const mail = await db.mail.groupBy({ by: ['state'], _count: { _all: true } });
  const jobs = await db.job.groupBy({ by: ['stage'], _count: { _all: true } });
  const oldest = await db.mail.findFirst({
    where: { state: { in: ['queued', 'sending'] } },
    orderBy: { queuedAt: 'asc' },
    select: { queuedAt: true },
  });
  const age = oldest ? (now().getTime() - oldest.queuedAt.getTime()) / 1000 : 0;
  return {
    mail: mail.map(({ state, _count }) => ({ state, count: _count._all })),
    oldestMailSeconds: Math.max(0, age),
    jobs: jobs.map(({ stage, _count }) => ({ stage, count: _count._all })),
  };
}
