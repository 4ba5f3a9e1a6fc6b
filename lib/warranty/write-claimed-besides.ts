import { addBeside } from '@/lib/bench/write-besides';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import type { Ruling } from './rules/causes';
import { isCoveredAtLeastPartly } from './rules/ruling';
import { isOther } from './rules/standing';

/**
 * Has a claim's unit pass the check sheets of those repairs beside the certificate's own that failed again, inside the transaction of
 * a final ruling that covers something: those which the certificate in force was proved on and the symptom belongs to, or all of them
 * where the customer could name none. The bench may leave one out that turns out to be sound.
 */
export async function writeClaimedBesides(
  tx: Tx,
  o: { jobId: string; certificateNumber: string; ruling: Ruling; actor: Actor; now: Date },
): Promise<void> {
  if (!isCoveredAtLeastPartly(o.ruling)) return;
  const claim = await tx.claim.findFirstOrThrow({
    where: { jobId: o.jobId },
    select: {
      symptom: true,
      job: { select: { repairId: true, besides: { select: { sheet: { select: { repairId: true } } } } } },
    },
  });
  const proved = await tx.sheetBeside.findMany({
    where: { job: { certificates: { some: { number: o.certificateNumber, supersededAt: null } } } },
    orderBy: { at: 'asc' },
    select: {
      sheet: {
        select: {
          repair: {
            select: {
              id: true,
              name: true,
              symptoms: true,
              sheets: { orderBy: { version: 'desc' }, take: 1, select: { id: true, version: true } },
            },
          },
        },
      },
    },
  });
  const there = [claim.job.repairId, ...claim.job.besides.map(({ sheet }) => sheet.repairId)];
  for (const { repair } of proved.map(({ sheet }) => sheet)) {
    const [sheet] = repair.sheets;
    const isClaimed = isOther(claim.symptom) || repair.symptoms.includes(claim.symptom);
    if (!sheet || !isClaimed || there.includes(repair.id)) continue;
    await addBeside(tx, { ...o, sheet, repair: repair.name, isByPrice: false });
  }
}
