import type { Handover } from '@/lib/jobs/rules/handover';
import { readCarrierRows } from './records';
import { transitDays, transitTo } from './rules/carriers';

/**
 * Working days after which a parcel to the customer of a job has usually come at the latest; 0 where they collect it. Without a
 * carrier, which is named when it leaves, what is usual.
 */
export async function readTransitDays(
  { customer }: { customer: { country: string } },
  handover: Handover | null,
  workshop: { country: string },
): Promise<number> {
  if (handover?.by === 'collected') return transitDays(handover);
  return transitTo(
    { carrier: handover?.carrier ?? '', from: workshop.country, to: customer.country },
    handover ? await readCarrierRows() : [],
  );
}
