import { db } from '@/lib/db/client';
import { listJobs } from '@/lib/jobs/list-jobs';
import { findJobByToken, newestTokenOf } from '@/lib/jobs/private-link';
import { readJob, readStatus } from '@/lib/jobs/records';
import { readToday } from '@/lib/jobs/today';

/** What a page asks of the database, by the page's name; `i` picks another job each time. */
export type Reading = { page: string; read: (i: number) => Promise<unknown> };

/** The four readings that must not grow with the history of the workshop. */
export async function pageReadings(now: Date): Promise<Reading[]> {
  const jobs = await db.job.findMany({
    where: { stage: 'closed' },
    orderBy: { id: 'desc' },
    take: 50,
    select: { id: true, number: true, serialKey: true },
  });
  const samples = await Promise.all(
    jobs.map(async (job) => ({ ...job, token: await newestTokenOf(job.id) })),
  );
  const at = (i: number) => {
    const job = samples[i % samples.length];
    if (!job) throw new Error('there is no closed job to read');
    return job;
  };
  return [
    { page: 'tracking', read: (i) => readStatus(at(i).number) },
    {
      page: 'job by its private link',
      async read(i) {
        const found = await findJobByToken(at(i).token ?? '');
        return found && readJob({ id: found.jobId });
      },
    },
    { page: 'Today', read: () => readToday(now) },
    {
      page: 'search by part of a serial',
      read: (i) => listJobs({ stage: null, q: at(i).serialKey.slice(2, 9), page: 1 }),
    },
  ];
}
