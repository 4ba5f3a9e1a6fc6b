import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import type { PinTable } from './rules/pin-table';
import { findPinTable } from './rules/pin-tables/all';
import { ownPinTable } from './rules/read-pin-table';

/** The pin table a check names: one that ships with the program, or one of the workshop's own, retired or not; null for neither. */
export async function readTable(key: string | null, client: Tx = db): Promise<PinTable | null> {
  if (key === null) return null;
  const shipped = findPinTable(key);
  if (shipped) return shipped;
  const row = await client.pinTable.findUnique({ where: { id: key } });
  return row ? ownPinTable(row) : null;
}

export type OwnTableRow = {
  id: string;
  name: string;
  source: string;
  text: string;
  createdAt: Date;
  userId: string;
  retiredAt: Date | null;
};

/** The workshop's own pin tables, those in use first, then by name and age. */
export async function listOwnTables(client: Tx = db): Promise<OwnTableRow[]> {
  const rows = await client.pinTable.findMany({ orderBy: [{ name: 'asc' }, { createdAt: 'desc' }] });
  return [...rows.filter((row) => row.retiredAt === null), ...rows.filter((row) => row.retiredAt !== null)];
}

/** One of the workshop's own pin tables with how many checks name it; null when there is none. */
export async function readOwnTable(id: string, client: Tx = db) {
  const [row, checks] = await Promise.all([
    client.pinTable.findUnique({ where: { id } }),
    client.check.count({ where: { pinTable: id } }),
  ]);
  return row ? { ...row, checks } : null;
}
