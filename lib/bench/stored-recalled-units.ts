import { db } from '@/lib/db/client';
import { foldSerial } from '@/lib/numbers/serial';
import { rememberFor } from '@/lib/remembered';
import type { SoughtUnit } from './stored-recalls';
import { IN_FORCE } from './stored-stock';

/** Jobs that fitted a recalled piece which is still in its unit, by everything that a unit is sought by (`jobsOf`). */
type Known = { serials: ReadonlySet<string>; certificates: ReadonlySet<string> };

const known = rememberFor<Known>(60_000);

/**
 * Whether a unit could carry a recalled piece. Customers' pages ask each time, and of nearly every unit the answer is no, so the few
 * that could are kept for a minute by each process; only for what is shown. Whether a unit may travel is asked of the database.
 */
export async function mayCarryRecalled({
  modelId,
  serials,
  certificateNumbers,
}: SoughtUnit): Promise<boolean> {
  const { serials: keys, certificates } = await known.of('all', new Date(), readKnown);
  return (
    serials.some((serial) => keys.has(keyOf(modelId, foldSerial(serial)))) ||
    certificateNumbers.some((number) => certificates.has(number))
  );
}

/** Makes the next page see a lot that was just recalled, or whose recall was lifted. */
export function forgetRecalledUnits(): void {
  known.forget();
}

async function readKnown(): Promise<Known> {
  const uses = await db.partUse.findMany({
    where: { takenOutAt: null, lot: { recalls: { some: IN_FORCE } } },
    select: {
      job: {
        select: {
          modelId: true,
          serialKey: true,
          certificates: { select: { number: true } },
          claim: { select: { certificateNumber: true } },
        },
      },
    },
  });
  return {
    serials: new Set(uses.map(({ job }) => keyOf(job.modelId, job.serialKey))),
    certificates: new Set(
      uses.flatMap(({ job }) => [
        ...job.certificates.map(({ number }) => number),
        ...(job.claim ? [job.claim.certificateNumber] : []),
      ]),
    ),
  };
}

function keyOf(modelId: string, serialKey: string): string {
  return `${modelId} ${serialKey}`;
}
