import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import { adding, replacing } from '@/lib/catalogue/rules/sheet-changes';
import { sheetMoved, writeCheckSheet } from '@/lib/catalogue/write-check-sheet';
import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { writeEvent } from '@/lib/jobs/write-event';
import { Refusal } from '@/lib/outcome';
import { isCoveredAtLeastPartly } from './rules/ruling';
import { readRuling } from './stored-ruling';
import { readTaughtRepairs } from './stored-taught-repairs';

export type Lesson = ByStaff & {
  claimId: string;
  /** the repair whose check sheet is taught: that of the claim's job, or one the unit was proved on beside it */
  repairId: string;
  /** the version of the check sheet that the person saw */
  basedOn: number;
  check: CheckDraft;
  /** place of the check that is changed, counted from 1; null adds one at the end */
  replaces: number | null;
};

/**
 * Puts what a claim taught on the check sheet of the repair it is about: the next version holds a check that names the claim, and
 * returns that version's number. Units already booked, this one included, are proved on the version they came under.
 *
 * Adding a check only makes proving harder, so whoever rules may do it; changing one may make it easier and is the
 * owner's. Two lessons at once both start from version n: the unique index lets the first in, the second is told.
 */
export async function learnFromClaim(lesson: Lesson): Promise<number> {
  try {
    return await transaction((tx) => teach(tx, lesson));
  } catch (error) {
    if (isUniqueViolation(error, 'check_sheet_repairId_version_key')) throw sheetMoved();
    throw error;
  }
}

async function teach(tx: Tx, o: Lesson): Promise<number> {
  const { claimId, repairId, basedOn, replaces, actor, now, ...given } = o;
  if (replaces !== null && actor.kind !== 'owner')
    throw new Refusal('not-allowed', 'Changing a check is the owner’s. You can add one.');
  const claim = await tx.claim.findUnique({
    where: { id: claimId },
    select: {
      number: true,
      jobId: true,
      cause: true,
      ruling: true,
      secondLookAt: true,
      certificateNumber: true,
    },
  });
  if (!claim) throw new Refusal('not-found', 'There is no claim with this number.');
  const ruled = readRuling(claim);
  if (!ruled?.isFinal || !isCoveredAtLeastPartly(ruled.ruling))
    throw new Refusal('conflict', 'A claim teaches a check once it is ruled covered, at least partly.');
  const [own, ...besides] = await readTaughtRepairs(claim, tx);
  const beside = besides.find(({ id }) => id === repairId);
  if (repairId !== own?.id && !beside)
    throw new Refusal('invalid', 'The unit was not proved on the check sheet of this repair.');
  const check = { ...given.check, lesson: claim.number };
  const version = await writeCheckSheet(tx, {
    repairId,
    basedOn,
    change: replaces === null ? adding(check) : replacing(replaces, check),
    now,
  });
  if (version === basedOn)
    throw new Refusal('invalid', 'That would change nothing on the sheet.', 'replaces');
  await writeEvent(tx, {
    jobId: claim.jobId,
    actor,
    now,
    event: {
      kind: 'check-taught',
      data: { claim: claim.number, check: check.label, version, ...(beside && { repair: beside.name }) },
    },
  });
  return version;
}
