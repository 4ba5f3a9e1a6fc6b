import { mayCarryRecalled } from '@/lib/bench/stored-recalled-units';
import {
  cellsOf,
  isUnitHere,
  jobsOf,
  type RecalledPiece,
  recalledPieces,
  type SoughtUnit,
} from '@/lib/bench/stored-recalls';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import type { JobRecord } from './records';
import { packingSlip, type SlipAnswer } from './rules/packing-slip';
import { GONE_FOR_GOOD } from './rules/unclaimed';

/** The unit of a job, also where a claim was opened with a serial that is only close to the certificate's. */
export function unitOfJob(job: JobRecord): SoughtUnit {
  const { claim } = job;
  return {
    modelId: job.model.id,
    serials: [job.serialTyped, ...(claim ? [claim.certificate.serialTyped] : [])],
    certificateNumbers: [
      ...job.certificates.map(({ number }) => number),
      ...(claim ? [claim.certificateNumber] : []),
    ],
  };
}

/** Cells in doubt in a unit that is about to be booked, as far as its serial tells. */
export async function recalledCellsOf(
  o: { modelId: string; serial: string | undefined },
  client?: Tx,
): Promise<string[]> {
  if (o.serial === undefined) return [];
  return cellsOf(
    await recalledPieces({ modelId: o.modelId, serials: [o.serial], certificateNumbers: [] }, client),
  );
}

/** Whether a job has a packing slip, with what is known of the cells in its unit. */
export async function slipOfJob(job: JobRecord): Promise<SlipAnswer> {
  return packingSlip(job, job.stage === 'booked' ? cellsOf(await recalledPieces(unitOfJob(job))) : []);
}

/** What the customer of a job is warned of. */
export async function piecesToWarnOfOnJob(job: JobRecord): Promise<RecalledPiece[]> {
  return piecesToWarnOf(unitOfJob(job), job.bookedAt);
}

/**
 * Pieces of recalled lots in the unit of a job, in words, whichever job fitted them: a unit that comes on a claim carries what its
 * first repair put in, and does not leave with it again.
 */
export async function recalledInUnit(job: JobRecord, client?: Tx): Promise<string[]> {
  return (await recalledPieces(unitOfJob(job), client)).map(({ part, lot }) => `${part}, lot ${lot}`);
}

/**
 * Pieces of recalled lots about which a customer has to be warned: those in a unit that is with them. It was theirs from a time on, and
 * is no more once any of its jobs ended later with its being given away, recycled or sold; whoever got it then is warned on papers of
 * their own.
 */
export async function piecesToWarnOf(unit: SoughtUnit, since: Date): Promise<RecalledPiece[]> {
  const pieces = (await mayCarryRecalled(unit)) ? await recalledPieces(unit) : [];
  if (pieces.length === 0 || (await isUnitHere(unit))) return [];
  return (await isGoneSince(unit, since)) ? [] : pieces;
}

async function isGoneSince(unit: SoughtUnit, since: Date): Promise<boolean> {
  const gone = await db.jobEvent.count({
    where: {
      jobId: { in: await jobsOf(unit) },
      kind: 'unclaimed-decided',
      at: { gte: since },
      OR: GONE_FOR_GOOD.map((decision) => ({ data: { path: ['decision'], equals: decision } })),
    },
  });
  return gone > 0;
}
