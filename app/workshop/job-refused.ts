import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { changesSince } from '@/lib/jobs/changes-since';
import { showNumber } from '@/lib/numbers/job-number';
import type { Refusal } from '@/lib/outcome';

/**
 * A refusal at the job sheet. The loser of a race sees what changed since the version they had, and keeps what they
 * typed.
 */
export async function jobRefused(
  refusal: Refusal,
  o: { jobNumber: string; version: number; values?: FormState['values'] },
): Promise<FormState> {
  if (refusal.code !== 'conflict') return refused(refusal, o.values);
  return {
    values: o.values,
    conflict: {
      message: `${refusal.message} This is what happened to ${showNumber(o.jobNumber)} meanwhile:`,
      changes: await changesSince(o.jobNumber, o.version),
      href: `/workshop/jobs/${o.jobNumber}`,
    },
  };
}
