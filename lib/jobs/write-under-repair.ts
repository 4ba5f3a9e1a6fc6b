import { unitName } from '@/lib/catalogue/rules/unit-name';
import type { Tx } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import type { Actor } from './actor';
import { type JobRecord, MODEL, USUAL_PARTS } from './records';
import { batteryKind } from './rules/posted-answer';
import type { Stage } from './rules/stages';
import { writeEvent } from './write-event';

/** What of a job says which repair it is under. */
export type Under = Pick<JobRecord, 'model' | 'repair'>;

type Before = {
  id: string;
  batteryAnswer: string;
  model: { id: string; battery: string };
  repair: { name: string; formerNames: string[]; minutes: number };
};

/**
 * Puts a job under another repair of the catalogue, with the newest version of its check sheet and its model, inside the caller's
 * transaction. What was entered on the old sheet stays with the job and counts no more; the price and what the contract promised
 * stand. Gives what the job is under now; refuses a repair that is not there or has no sheet.
 */
export async function writeUnderRepair(
  tx: Tx,
  o: {
    job: Before;
    repairId: string;
    actor: Actor;
    now: Date;
    expected?: { version?: number; stages?: readonly Stage[] };
  },
): Promise<Under> {
  const { job } = o;
  const found = await tx.repair.findUnique({
    where: { id: o.repairId },
    include: {
      model: MODEL,
      policy: { include: { versions: { orderBy: { version: 'desc' }, take: 1 } } },
      usualParts: USUAL_PARTS,
      sheets: { orderBy: { version: 'desc' }, take: 1, select: { id: true, version: true } },
    },
  });
  if (!found) throw new Refusal('invalid', 'Choose a repair of the catalogue', 'repair');
  const { model, sheets, ...repair } = found;
  const [sheet] = sheets;
  if (!sheet)
    throw new Refusal('invalid', 'This repair has no check sheet yet, so it cannot be proved', 'repair');
  // Its sheet is the job's own now, and is asked for once.
  await tx.sheetBeside.deleteMany({ where: { jobId: job.id, sheet: { repairId: repair.id } } });
  // Said of the repair before: of this one nobody has said it.
  await tx.partNotNeeded.deleteMany({
    where: { jobId: job.id, part: { usualFor: { some: { repairId: repair.id } } } },
  });
  await writeEvent(tx, {
    jobId: job.id,
    actor: o.actor,
    now: o.now,
    ...(o.expected && { expected: o.expected }),
    set: {
      repairId: repair.id,
      sheetId: sheet.id,
      ...(model.id !== job.model.id && ofModel(model, job)),
    },
    event: {
      kind: 'repair-changed',
      data: {
        from: job.repair.name,
        formerly: job.repair.formerNames,
        minutesBefore: job.repair.minutes,
        to: repair.name,
        sheet: sheet.version,
        ...(model.id !== job.model.id && { unit: unitName(model) }),
      },
    },
  });
  return { repair, model };
}

/** Nobody was asked about the battery of a unit booked as a model without: that is no answer about the one which has one. */
function ofModel(model: { id: string; battery: string }, before: Before) {
  const hadNone = batteryKind(before.model.battery) === 'none' && before.batteryAnswer === 'none';
  return { modelId: model.id, ...(hadNone && { batteryAnswer: 'unknown' }) };
}
