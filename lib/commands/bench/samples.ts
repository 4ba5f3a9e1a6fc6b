import { db } from '@/lib/db/client';
import { newestTokenOf } from '@/lib/jobs/private-link';

/** What the addresses of one job's pages are made of. */
export type JobSample = {
  number: string;
  token: string;
  serialKey: string;
  certificate: string;
};

const MOST = 100;

/** Seven characters out of the middle of a serial, as somebody reads them off a worn label. */
export const partOfSerial = (job: { serialKey: string }): string => job.serialKey.slice(2, 9);

/** Closed jobs from the whole history, in no order of it, with their private links and certificates. */
export async function jobSamples(): Promise<JobSample[]> {
  const jobs = await db.$queryRaw<{ id: string; number: string; serialKey: string; certificate: string }[]>`
    SELECT j."id", j."number", j."serialKey", c."number" AS "certificate"
    FROM "job" j JOIN LATERAL (
      SELECT "number" FROM "certificate" WHERE "jobId" = j."id" ORDER BY "revision" DESC LIMIT 1
    ) c ON TRUE
    WHERE j."stage" = 'closed' ORDER BY md5(j."id") LIMIT ${MOST}`;
  return Promise.all(
    jobs.map(async ({ id, ...job }) => ({ ...job, token: (await newestTokenOf(id)) ?? '' })),
  );
}
