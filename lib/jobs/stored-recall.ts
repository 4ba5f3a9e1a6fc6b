import {
  cellsOf,
  isUnitHere,
  type RecalledPiece,
  recalledPieces,
  type SoughtUnit,
} from '@/lib/bench/stored-recalls';
import type { Tx } from '@/lib/db/transaction';
import type { JobRecord } from './records';
import { packingSlip, type SlipAnswer } from './rules/packing-slip';
import { GONE_FOR_GOOD } from './rules/unclaimed';
import { lastDecision } from './stored-decision';

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

/** What the customer of a job is warned of; nothing once the unit was given away, recycled or sold. */
export async function piecesToWarnOfOnJob(job: JobRecord): Promise<RecalledPiece[]> {
  const decided = lastDecision(job.events)?.decision;
  return decided && GONE_FOR_GOOD.includes(decided) ? [] : piecesToWarnOf(unitOfJob(job));
}

/**
 * Pieces of recalled lots in the unit of a job, in words, whichever job fitted them: a unit that comes on a claim carries what its
 * first repair put in, and does not leave with it again.
 */
export async function recalledInUnit(job: JobRecord, client?: Tx): Promise<string[]> {
  return (await recalledPieces(unitOfJob(job), client)).map(({ part, lot }) => `${part}, lot ${lot}`);
}

/** Pieces of recalled lots about which a customer has to be warned: those in a unit that is with them. */
export async function piecesToWarnOf(unit: SoughtUnit): Promise<RecalledPiece[]> {
  const pieces = await recalledPieces(unit);
  return pieces.length > 0 && !(await isUnitHere(unit)) ? pieces : [];
}
