import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { writeUnderRepair } from '@/lib/jobs/write-under-repair';
import { repairOfCertificate } from './records';
import type { Ruling } from './rules/causes';
import { isCoveredAtLeastPartly } from './rules/ruling';

/**
 * Puts a claim's job under the repair of its certificate again, inside the transaction of a final ruling that covers something: what
 * is covered is proved on its own sheet. The customer may have agreed to another repair after the ruling that they contested.
 */
export async function writeOwnRepair(
  tx: Tx,
  o: { jobId: string; certificateNumber: string; ruling: Ruling; actor: Actor; now: Date },
): Promise<void> {
  if (!isCoveredAtLeastPartly(o.ruling)) return;
  const job = await tx.job.findUniqueOrThrow({
    where: { id: o.jobId },
    select: {
      id: true,
      repairId: true,
      batteryAnswer: true,
      repair: { select: { name: true, formerNames: true, minutes: true } },
      model: { select: { id: true, battery: true } },
    },
  });
  const { repairId } = await repairOfCertificate(o.certificateNumber, tx);
  if (repairId !== job.repairId) await writeUnderRepair(tx, { ...o, job, repairId });
}
