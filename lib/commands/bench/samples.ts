import { db } from '@/lib/db/client';
import { newestTokenOf } from '@/lib/jobs/private-link';

/** What the addresses of one job's pages are made of. */
export type JobSample = {
  number: string;
  id: string;
  token: string;
  serialKey: string;
  certificate: string;
};

/** Fifty closed jobs with their private links and certificates, for whoever asks for another page each time. */
export async function jobSamples(): Promise<JobSample[]> {
  const jobs = await db.job.findMany({
    where: { stage: 'closed', certificates: { some: {} } },
    orderBy: { id: 'desc' },
    take: 50,
    select: {
      id: true,
      number: true,
      serialKey: true,
      certificates: { select: { number: true }, orderBy: { revision: 'desc' }, take: 1 },
    },
  });
  return Promise.all(
    jobs.map(async ({ certificates, ...job }) => ({
      ...job,
      token: (await newestTokenOf(job.id)) ?? '',
      certificate: certificates[0]?.number ?? '',
    })),
  );
}
