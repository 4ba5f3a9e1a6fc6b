import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { markOf } from '@/lib/shown-row';
import { CARRIER_KINDS, type Carrier, type CarrierKind } from './rules/carriers';
import type { CarrierInput } from './save-carrier';

/** A row of the workshop's list of carriers, with what only its own form needs. */
export type CarrierRow = Carrier & { id: string; position: number; isUsed: boolean };

/** What the form of a carrier shows of it, for its mark. */
export const CARRIER_FIELDS = {
  name: true,
  kind: true,
  divisor: true,
  wholeSides: true,
  stepGrams: true,
  maxGrams: true,
  longestSideMm: true,
  maxValueMinor: true,
  tracking: true,
  daysHome: true,
  daysAbroad: true,
  position: true,
  isUsed: true,
} as const satisfies Record<keyof CarrierInput, true>;

/** Every carrier of the workshop in its order, also those that are not used any more. */
export async function readCarrierRows(client: Tx = db): Promise<CarrierRow[]> {
  const rows = await client.carrier.findMany({ orderBy: [{ position: 'asc' }, { name: 'asc' }] });
  return rows.map(carrierOf);
}

/** The carriers that a parcel may be given to now. */
export async function carriersInUse(client: Tx = db): Promise<Carrier[]> {
  const rows = await readCarrierRows(client);
  return rows.filter((row) => row.isUsed).map(({ id: _, position: __, isUsed: ___, ...carrier }) => carrier);
}

export async function readCarrierRow(id: string): Promise<(CarrierRow & { mark: string }) | null> {
  const row = await db.carrier.findUnique({ where: { id } });
  return row && { ...carrierOf(row), mark: markOf(CARRIER_FIELDS, row) };
}

function carrierOf(row: Omit<CarrierInput, 'kind'> & { id: string; kind: string }): CarrierRow {
  return {
    id: row.id,
    position: row.position,
    isUsed: row.isUsed,
    name: row.name,
    volume: { unit: 'cm-kg', divisor: row.divisor, wholeSides: row.wholeSides, step: row.stepGrams },
    maxWeight: row.maxGrams,
    longestSide: row.longestSideMm,
    maxValueMinor: row.maxValueMinor,
    kind: readCarrierKind(row.kind),
    tracking: row.tracking === '' ? null : row.tracking,
    transit: { home: row.daysHome, abroad: row.daysAbroad },
  };
}

function readCarrierKind(text: string): CarrierKind {
  const kind = CARRIER_KINDS.find((known) => known === text);
  if (!kind) throw new Error(`a carrier has the unknown kind ${text}`);
  return kind;
}

/** What the catalogue calls units of a family: a customs form asks for the kind of thing in plain words. */
export async function familyName(id: string): Promise<string> {
  return (await db.family.findUniqueOrThrow({ where: { id }, select: { name: true } })).name;
}
