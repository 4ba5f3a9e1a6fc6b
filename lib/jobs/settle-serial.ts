import { transaction } from '@/lib/db/transaction';
import { foldSerial } from '@/lib/numbers/serial';
import { Refusal } from '@/lib/outcome';
import type { Actor } from './actor';
import { writeEvent } from './write-event';

/**
 * A person settles which serial the unit carries, after looking at it. The booking keeps what the customer typed in
 * the history; the job goes on under the serial that was read. Needs a photo of the unit, as the proof.
 */
export async function settleSerial(o: {
  jobId: string;
  version: number;
  serial: string;
  note: string;
  actor: Actor;
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    const photos = await tx.photo.count({ where: { jobId: o.jobId, purpose: 'arrival' } });
    if (photos === 0) throw new Refusal('invalid', 'Add a photo of the serial on the unit first.', 'serial');
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: ['arrived', 'assessing'] },
      set: { serialTyped: o.serial, serialKey: foldSerial(o.serial), isSerialSettled: true },
      event: { kind: 'serial-settled', data: { serial: o.serial, note: o.note } },
    });
  });
}
