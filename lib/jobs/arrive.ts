import { transaction } from '@/lib/db/transaction';
import { type Arrival, writeArrival } from './write-arrival';

export type { Arrival } from './write-arrival';

/** Takes in a parcel that was booked (see write-arrival.ts). */
export async function arrive(o: Arrival): ReturnType<typeof writeArrival> {
  return transaction((tx) => writeArrival(tx, o));
}
