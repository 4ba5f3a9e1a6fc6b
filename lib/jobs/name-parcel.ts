import { transaction } from '@/lib/db/transaction';
import { checkS10 } from '@/lib/numbers/s10';
import { Refusal } from '@/lib/outcome';
import { writeEvent } from './write-event';

/** Keeps the reference of the parcel the customer posted, so that arrivals find the booking by it. */
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
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: { kind: 'customer' },
      now: o.now,
      expected: { stages: ['booked'] },
      set: { inboundReference: o.reference },
      event: { kind: 'parcel-named', data: { reference: o.reference } },
    });
  });
}
