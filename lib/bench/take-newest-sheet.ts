import { transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { readStage } from '@/lib/jobs/records';
import { mayTakeNewestSheet, SHEET_REASONS } from '@/lib/jobs/rules/guards';
import { PROOF_STAGES } from '@/lib/jobs/rules/stage-sets';
import { writeEvent } from '@/lib/jobs/write-event';
import { Refusal } from '@/lib/outcome';
import { newestSheetOf } from './sheet-records';

/**
 * Puts a job on the newest version of its repair's check sheet, for a sheet that was wrong when the job was booked. What was entered
 * on the old version stays with the job and counts no more. Refuses where the job is at another stage or on that version already, and
 * where a version came that the person did not see.
 */
export async function takeNewestSheet(
  o: OnJob & {
    /** Version of the sheet the person pressed for. */
    sheetVersion: number;
  },
): Promise<void> {
  await transaction(async (tx) => {
    const job = await tx.job.findUniqueOrThrow({
      where: { id: o.jobId },
      select: { stage: true, repairId: true, sheet: { select: { version: true } } },
    });
    const newest = await newestSheetOf(job.repairId, tx);
    const from = job.sheet.version;
    const answer = mayTakeNewestSheet({
      stage: readStage(job.stage),
      version: from,
      newest: newest?.version ?? from,
    });
    if (!newest || !answer.allowed) {
      throw new Refusal('conflict', SHEET_REASONS[answer.allowed ? 'is-newest' : answer.reason]);
    }
    if (newest.version !== o.sheetVersion) {
      throw new Refusal('conflict', `Meanwhile the sheet is at version ${newest.version}. Look at it first.`);
    }
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: PROOF_STAGES },
      set: { sheetId: newest.id },
      event: { kind: 'sheet-renewed', data: { from, to: newest.version } },
    });
  });
}
