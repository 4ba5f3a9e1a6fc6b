import type { CheckLimits, RecordedEntry } from './rules/checks';

export type StoredCheck = CheckLimits & {
  id: string;
  label: string;
  help: string;
  unit: string | null;
  lesson: string | null;
  caution: string | null;
};

/** A check read back from its row, without what only the database needs. */
export function readCheck(row: StoredCheck): StoredCheck {
  const { id, kind, label, help, unit, low, high, choices, passing, lesson, caution, pinTable } = row;
  return { id, kind, label, help, unit, low, high, choices, passing, lesson, caution, pinTable };
}

export function readEntry(row: RecordedEntry): RecordedEntry {
  return { checkId: row.checkId, isPassed: row.isPassed, at: row.at };
}
