import type { Handover } from '@/lib/jobs/rules/handover';
import { readCarrierRows } from './records';
import { findCarrier, transitDays } from './rules/carriers';

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
  return transitDays({
    by: 'carrier',
    listed: handover && findCarrier(handover.carrier, await readCarrierRows()),
    isAbroad: customer.country !== '' && customer.country !== workshop.country,
  });
}
