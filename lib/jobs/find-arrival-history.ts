import { type Day, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { certificatesOfSerial } from '@/lib/warranty/records';
import { readStage } from './records';
import type { Stage } from './rules/stages';

export type SerialHistory = {
  jobs: { number: string; stage: Stage; repair: string; bookedOn: Day }[];
  /** revisions in force, newest first; until when they cover is counted by lib/warranty/cover-view.ts */
  certificates: { number: string; revision: number }[];
};

/** A unit with more certificates than this is looked up by its jobs. */
const MOST_CERTIFICATES = 5;

/** What we know of a serial besides one job: earlier jobs, newest first, and certificates in force. */
export async function historyOfSerial(o: {
  serialKeys: readonly string[];
  exceptJobId: string;
  timeZone: string;
}): Promise<SerialHistory> {
  const [jobs, certificates] = await Promise.all([
    db.job.findMany({
      where: {
        serialKey: { in: [...o.serialKeys] },
        id: { not: o.exceptJobId },
        stage: { not: 'cancelled' },
      },
      orderBy: { bookedAt: 'desc' },
      select: { number: true, stage: true, bookedAt: true, repair: { select: { name: true } } },
      take: 10,
    }),
    certificatesOfSerial(o.serialKeys),
  ]);
  return {
    jobs: jobs.map((job) => ({
      number: job.number,
      stage: readStage(job.stage),
      repair: job.repair.name,
      bookedOn: dayInZone(job.bookedAt, o.timeZone),
    })),
    certificates: certificates
      .slice(0, MOST_CERTIFICATES)
      .map(({ number, revision }) => ({ number, revision })),
  };
}
