import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import type { JobRecord } from '@/lib/jobs/records';
import { writeEvent } from '@/lib/jobs/write-event';
import { type ParcelFacts, readParcel } from './stored-parcel';

/**
 * Keeps the packed parcel's measures on its job, inside the caller's transaction, and returns the job's version after it.
 * A parcel that is packed as it was before writes nothing.
 */
export async function writeParcel(
  tx: Tx,
  o: { job: JobRecord; version: number; parcel: ParcelFacts; actor: Actor; now: Date },
): Promise<number> {
  const { grams, sides, valueMinor, battery } = o.parcel;
  if (isSame(o.parcel, readParcel(o.job))) return o.version;
  const [parcelLengthMm, parcelWidthMm, parcelHeightMm] = sides ?? [null, null, null];
  return writeEvent(tx, {
    jobId: o.job.id,
    actor: o.actor,
    now: o.now,
    expected: { version: o.version, stages: ['ready'] },
    set: { parcelGrams: grams, parcelLengthMm, parcelWidthMm, parcelHeightMm, valueMinor },
    event: { kind: 'parcel-packed', data: { grams, sides: sides && [...sides], valueMinor, battery } },
  });
}

function isSame(a: ParcelFacts, b: ParcelFacts): boolean {
  const values = (parcel: ParcelFacts) => [
    parcel.grams,
    ...(parcel.sides ?? [null]),
    parcel.valueMinor,
    parcel.battery,
  ];
  return JSON.stringify(values(a)) === JSON.stringify(values(b));
}
