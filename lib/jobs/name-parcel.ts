import { transaction } from '@/lib/db/transaction';
import { checkS10 } from '@/lib/numbers/s10';
import { Refusal } from '@/lib/outcome';

/**
 * Keeps the reference of the parcel the customer posted, so that arrivals find the booking by it. It is no change of
 * the job's course, so it raises no version and writes no event.
 */
export async function nameParcel(o: { jobId: string; reference: string; now: Date }): Promise<void> {
  const reading = checkS10(o.reference);
  if (reading.form === 's10' && !reading.valid) {
    throw new Refusal(
      'invalid',
      'One character looks wrong. Compare it with the receipt once more.',
      'reference',
    );
  }
  await transaction(async (tx) => {
    const { count } = await tx.job.updateMany({
      where: { id: o.jobId, stage: 'booked' },
      data: { inboundReference: o.reference },
    });
    if (count === 0) throw new Refusal('conflict', 'Your unit is here already.', 'reference');
  });
}
