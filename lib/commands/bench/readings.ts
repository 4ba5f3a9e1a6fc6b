import { findEverywhere } from '@/lib/jobs/find-everywhere';
import { listJobs } from '@/lib/jobs/list-jobs';
import { findJobByToken } from '@/lib/jobs/private-link';
import { readJob, readStatus } from '@/lib/jobs/records';
import { readToday } from '@/lib/jobs/today';
import { jobSamples, partOfSerial } from './samples';

/** What a page asks of the database, by the page's name; `i` picks another job each time. */
export type Reading = { page: string; read: (i: number) => Promise<unknown> };

/** The readings that must not grow with the history of the workshop. */
export async function pageReadings(now: Date): Promise<Reading[]> {
  const samples = await jobSamples();
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
        const found = await findJobByToken(at(i).token);
        return found && readJob({ id: found.jobId });
      },
    },
    { page: 'Today', read: () => readToday(now) },
    {
      page: 'search by part of a serial',
      read: (i) => listJobs({ stage: null, q: partOfSerial(at(i)), page: 1 }),
    },
    {
      page: 'find by part of a serial',
      read: (i) => findEverywhere({ q: partOfSerial(at(i)), withInvoices: true }),
    },
  ];
}
