import type { CheckDraft } from '@/lib/bench/rules/check-problems';

/** What happens to the checks of a sheet on the way to its next version. */
export type SheetChange = (checks: readonly CheckDraft[]) => readonly CheckDraft[];

/** A change that puts checks at the end of the sheet. */
export function adding(...added: readonly CheckDraft[]): SheetChange {
  return (checks) => [...checks, ...added];
}

/** A change that replaces the check at a position, counted from 1; the lesson it was taught by stays with it. */
export function replacing(position: number, check: CheckDraft): SheetChange {
  return (checks) =>
    checks.map((each, i) => (i === position - 1 ? { ...check, lesson: check.lesson ?? each.lesson } : each));
}

/** A change that takes the check at a position off the sheet. */
export function removing(position: number): SheetChange {
  return (checks) => checks.filter((_, i) => i !== position - 1);
}

/** A change that moves the check at a position one place up or down; at the end of the list it stays. */
export function moving(position: number, by: -1 | 1): SheetChange {
  return (checks) => {
    const moved = checks[position - 1];
    const other = checks[position - 1 + by];
    if (!moved || !other) return checks;
    return checks.map((each, i) => (i === position - 1 ? other : i === position - 1 + by ? moved : each));
  };
}
