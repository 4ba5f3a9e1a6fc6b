import { readLot, readPart } from '@/lib/bench/part-records';
import { day } from '@/lib/calendar/day';
import { readFamily, readModel, readPolicy, readRepair } from '@/lib/catalogue/staff-records';
import { readCarrierRow } from '@/lib/parcels/records';
import { readStaff } from '@/lib/people/records';
import type { Shown } from '@/lib/shown-row';

const READERS = {
  family: readFamily,
  model: readModel,
  repair: readRepair,
  policy: readPolicy,
  carrier: readCarrierRow,
  part: readPart,
  lot: (id: string) => readLot(id, day('2026-11-25')),
  person: (id: string) => readStaff(id, new Date()),
};

/** A row as somebody's page shows it now: what its form is sent with. A row that is gone has no mark. */
export async function shownNow(kind: keyof typeof READERS, id: string): Promise<Shown> {
  return { id, mark: (await READERS[kind](id))?.mark ?? '' };
}
