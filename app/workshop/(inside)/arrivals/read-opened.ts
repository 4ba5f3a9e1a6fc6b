import { unitName } from '@/lib/catalogue/rules/unit-name';
import 'server-only';
import { factsOf } from '@/lib/jobs/facts';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import type { JobRecord } from '@/lib/jobs/records';
import { mayMove, reasonSentence } from '@/lib/jobs/rules/guards';

/** A job that was opened for a parcel, whose booking is looked for. */
export type OpenedParcel = Pick<JobRecord, 'number' | 'version' | 'arrivedSerial' | 'accessories'> & {
  unit: string;
  customer: string;
  email: string;
  /** why its parcel cannot be that of a booking, in words; null where it can */
  why: string | null;
};

/** The job that an address names as opened for a parcel; null where it names none. */
export async function readOpened(named: string | string[] | undefined): Promise<OpenedParcel | null> {
  const job = typeof named === 'string' ? await jobByNumber(named) : null;
  if (!job) return null;
  const facts = factsOf(job);
  const answer = mayMove('is-of-booking', facts, 'staff');
  const [reason] = answer.allowed ? [] : answer.reasons;
  return {
    number: job.number,
    version: job.version,
    arrivedSerial: job.arrivedSerial,
    accessories: job.accessories,
    unit: unitName(job.model),
    customer: job.customer.name,
    email: job.customer.email,
    why: reason ? reasonSentence(reason, facts, 'en-GB') : null,
  };
}
