import 'server-only';
import { cache } from 'react';
import { findJobByToken } from '@/lib/jobs/private-link';
import { type JobRecord, readJob } from '@/lib/jobs/records';

/** The job a private link opens, once for each request; null for a token that opens nothing. */
export const jobOfToken = cache(async (token: string): Promise<JobRecord | null> => {
  const found = await findJobByToken(token);
  return found ? readJob({ id: found.jobId }) : null;
});
