import { transaction } from '@/lib/db/transaction';
import { checkS10 } from '@/lib/numbers/s10';
import { Refusal } from '@/lib/outcome';
import { writeEvent } from './write-event';

/**
 * Keeps the reference of the parcel the customer posted, so that arrivals find the booking by it. An empty one takes off a
 * number that was wrong; that a parcel was named before stays in the history.
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
    const { reference } = o;
    const { count } = await tx.job.updateMany({
      where: { id: o.jobId, inboundReference: { not: reference } },
      data: { inboundReference: reference, ...(reference !== '' && { parcelNamedAt: o.now }) },
    });
    // Sent twice, or empty where nothing was kept: nothing happened.
    if (count === 0) return;
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: { kind: 'customer' },
      now: o.now,
      expected: { stages: ['booked'] },
      event:
        reference === ''
          ? { kind: 'parcel-unnamed', data: {} }
          : { kind: 'parcel-named', data: { reference } },
    });
  });
}
