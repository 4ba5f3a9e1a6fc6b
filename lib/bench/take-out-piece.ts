import { transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { LEFT_STAGES } from '@/lib/jobs/rules/stage-sets';
import { writeEvent } from '@/lib/jobs/write-event';
import { Refusal } from '@/lib/outcome';
import { IN_FORCE } from './stored-stock';

/**
 * Notes that a piece of a recalled lot is out of a unit that had left with it: replaced on a later job, or taken out by a competent
 * person where the unit was. The warnings about it end, and the unit may travel again. The row stays, since what the lot did in that
 * unit is counted; a unit that is here has its piece put back instead (put-back-part.ts).
 *
 * Of two people who press at once the second sees an older version and is told.
 */
export async function takeOutPiece(o: OnJob & { partUseId: string }): Promise<void> {
  await transaction(async (tx) => {
    const lot = { recalls: { some: IN_FORCE } };
    const where = { id: o.partUseId, jobId: o.jobId, takenOutAt: null, lot };
    const use = await tx.partUse.findFirst({
      where,
      select: { lot: { select: { code: true, part: { select: { name: true } } } } },
    });
    if (!use) throw new Refusal('conflict', 'No such piece of a recalled lot is in this unit any more.');
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: LEFT_STAGES },
      event: {
        kind: 'recalled-part-out',
        data: { partUseId: o.partUseId, part: use.lot.part.name, lot: use.lot.code },
      },
    });
    await tx.partUse.update({
      where: { id: o.partUseId },
      data: { takenOutAt: o.now },
      select: { id: true },
    });
  });
}
