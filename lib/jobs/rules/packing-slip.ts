import type { BatteryVerdict } from '@/lib/parcels/rules/battery';
import { postedAnswer } from './posted-answer';

export type SlipAnswer =
  | { isOffered: true }
  /** stop: why the unit must not be posted; null where it is not to be posted any more */
  | { isOffered: false; stop: BatteryVerdict | null };

/**
 * Whether a job has a packing slip: only while its unit is still to be posted, and only where its battery may be. A unit that
 * came without a booking was never asked about before the post, so its answer may be one that no slip is made for; and a cell may
 * be recalled after the booking.
 */
export function packingSlip(
  job: {
    stage: string;
    batteryAnswer: string;
    model: { battery: string; batteryWh: number | null };
  },
  recalledCells: readonly string[],
): SlipAnswer {
  if (job.stage !== 'booked') return { isOffered: false, stop: null };
  const verdict = postedAnswer(job.model, job.batteryAnswer, recalledCells);
  return verdict.may === 'do-not-post' ? { isOffered: false, stop: verdict } : { isOffered: true };
}
