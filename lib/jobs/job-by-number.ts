import { readNumber } from '@/lib/numbers/job-number';
import { type JobRecord, readJob } from './records';

/** The job an address names, in any spelling of its number; null when there is none. */
export async function jobByNumber(text: string): Promise<JobRecord | null> {
  const reading = readNumber(text);
  return reading.ok && reading.kind === 'J' ? readJob({ number: reading.number }) : null;
}
