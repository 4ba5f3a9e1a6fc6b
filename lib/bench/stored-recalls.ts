import { db } from '@/lib/db/client';
import { inOrder, newestFirst } from '@/lib/db/in-order';
import type { Tx } from '@/lib/db/transaction';
import { NOT_WITH_US } from '@/lib/jobs/rules/stage-sets';
import { foldSerial } from '@/lib/numbers/serial';
import { isCell, recallText } from './rules/recall-text';
import { IN_FORCE } from './stored-stock';

/** A unit by what is known of it: its model with any serial it was booked under, and the certificates that name it. */
export type SoughtUnit = {
  modelId: string;
  serials: readonly string[];
  certificateNumbers: readonly string[];
};

/** A piece of a recalled lot that is in a unit, with what its customer was or would be written about it. */
export type RecalledPiece = {
  /** the job that fitted it */
  jobNumber: string;
  part: string;
  lot: string;
  isCell: boolean;
  recalledAt: Date;
  text: string;
};

/**
 * Pieces of recalled lots that any job of a unit fitted, and that were neither put back nor taken out since, each part and lot once. Asked of the unit and not of
 * one job, since a claim or a next booking carries nothing itself, and the piece is in the unit all the same. A stop without a letter
 * keeps its reason in the workshop's words, so the letter stands for it as it is written by itself.
 */
export async function recalledPieces(unit: SoughtUnit, client: Tx = db): Promise<RecalledPiece[]> {
  const jobId = { in: await jobsOf(unit, client) };
  const uses = await client.partUse.findMany({
    where: { jobId, takenOutAt: null, lot: { recalls: { some: IN_FORCE } } },
    orderBy: inOrder,
    select: {
      job: { select: { number: true } },
      lot: {
        select: {
          code: true,
          part: { select: { name: true } },
          recalls: { where: IN_FORCE, orderBy: newestFirst, select: { at: true, text: true, mails: true } },
        },
      },
    },
  });
  const pieces = uses.flatMap(({ job, lot }): RecalledPiece[] => {
    const [newest] = lot.recalls;
    if (!newest) return [];
    const part = lot.part.name;
    const letter = lot.recalls.find((recall) => recall.mails > 0);
    return [
      {
        jobNumber: job.number,
        part,
        lot: lot.code,
        isCell: isCell(part),
        recalledAt: (letter ?? newest).at,
        text: letter?.text ?? recallText({ part }),
      },
    ];
  });
  return [...new Map(pieces.map((piece) => [`${piece.part}, lot ${piece.lot}`, piece])).values()];
}

/** The lots of which a piece is in a unit, whether recalled or not. */
export async function lotsInUnit(unit: SoughtUnit, client: Tx): Promise<string[]> {
  const where = { takenOutAt: null, jobId: { in: await jobsOf(unit, client) } };
  const uses = await client.partUse.findMany({ where, select: { lotId: true }, distinct: ['lotId'] });
  return uses.map(({ lotId }) => lotId);
}

/** Whether a unit is with the workshop now, by whichever of its jobs. */
export async function isUnitHere(unit: SoughtUnit): Promise<boolean> {
  const here = await db.job.count({
    where: { id: { in: await jobsOf(unit) }, stage: { notIn: [...NOT_WITH_US] } },
  });
  return here > 0;
}

/**
 * Ids of the jobs of a unit: booked under one of its serials, named by one of its certificates, or a claim on one. Asked for by
 * themselves, each from an index: in one condition over three tables every job is read, on pages that all customers of a recalled lot
 * open at once.
 */
export async function jobsOf(
  { modelId, serials, certificateNumbers }: SoughtUnit,
  client: Tx = db,
): Promise<string[]> {
  const keys = serials.map(foldSerial).filter((key) => key !== '');
  const numbers = [...certificateNumbers];
  const rows = await client.$queryRaw<{ id: string }[]>`
    SELECT "id" FROM "job" WHERE "serialKey" = ANY(${keys}::text[]) AND "modelId" = ${modelId}
    UNION SELECT "jobId" FROM "certificate" WHERE "number" = ANY(${numbers}::text[])
    UNION SELECT "jobId" FROM "claim" WHERE "certificateNumber" = ANY(${numbers}::text[])`;
  return rows.map(({ id }) => id);
}

/** Of pieces of recalled lots the cells, in words; those must not travel. */
export function cellsOf(pieces: readonly RecalledPiece[]): string[] {
  return pieces.filter((piece) => piece.isCell).map(({ part, lot }) => `${part}, lot ${lot}`);
}
