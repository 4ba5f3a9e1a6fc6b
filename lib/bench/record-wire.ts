import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { WORK_STAGES } from '@/lib/jobs/rules/stage-sets';
import { writeEvent } from '@/lib/jobs/write-event';
import { idOfSent, writeOnce } from '@/lib/jobs/write-once';
import { Refusal } from '@/lib/outcome';

export type WireInput = {
  fromPoint: string;
  toPoint: string;
  lengthMm: number;
  diameterUm: number;
  milliohms: number;
};

/** Most a jumper across one board can read; past it the typed unit is wrong (common practice, no source). */
const MOST_MILLIOHMS = 100_000;

/** Adds a jumper wire to a job, with what was measured across it. Refuses sizes and readings that no such wire has. */
export async function recordWire(
  o: ByStaff & { jobId: string; wire: WireInput; formKey?: string | undefined },
): Promise<void> {
  const { wire } = o;
  if (!(wire.milliohms >= 0 && wire.milliohms <= MOST_MILLIOHMS)) {
    throw new Refusal('invalid', 'Enter the reading as a number, with its unit beside it.', 'reading');
  }
  await writeOnce('jumper_wire_pkey', () =>
    transaction(async (tx) => {
      const { id } = await tx.jumperWire.create({
        data: {
          ...idOfSent(o.formKey, [o.jobId, wire]),
          ...wire,
          jobId: o.jobId,
          at: o.now,
          userId: o.actor.id,
        },
        select: { id: true },
      });
      await writeEvent(tx, {
        jobId: o.jobId,
        actor: o.actor,
        now: o.now,
        expected: { stages: WORK_STAGES },
        event: { kind: 'wire-recorded', data: { wireId: id, from: wire.fromPoint, to: wire.toPoint } },
      });
    }),
  );
}
