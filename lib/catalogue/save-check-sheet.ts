import { isUniqueViolation } from '@/lib/db/errors';
import { transaction } from '@/lib/db/transaction';
import { type SheetWrite, sheetMoved, writeCheckSheet } from './write-check-sheet';

/**
 * writeCheckSheet as a use case of its own.
 *
 * Two owners may change the same sheet at once. Both read version n and write n + 1; the unique index lets the first one
 * through and the second is told that the sheet has moved on.
 */
export async function saveCheckSheet(write: SheetWrite): Promise<number> {
  try {
    return await transaction((tx) => writeCheckSheet(tx, write));
  } catch (error) {
    if (isUniqueViolation(error, 'check_sheet_repairId_version_key')) throw sheetMoved();
    throw error;
  }
}
