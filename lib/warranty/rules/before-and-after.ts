import { type CheckLimits, limitsText } from '@/lib/bench/rules/checks';
import { entryText } from '@/lib/bench/rules/entry-text';

export type ComparedCheck = CheckLimits & { id: string; label: string; unit: string | null };
export type ComparedEntry = {
  checkId: string;
  isPassed: boolean;
  reading: number | null;
  isOverRange?: boolean;
  choice: string | null;
  /** of a connector sheet, as stored */
  probes?: unknown;
  at: Date;
};
export type Side = { checks: readonly ComparedCheck[]; entries: readonly ComparedEntry[] };

export type Reading = { text: string; isPassed: boolean };
export type ComparedReading = {
  label: string;
  /** limits as they stand now; those of the repair where the check is gone */
  limits: string;
  before: Reading | null;
  after: Reading | null;
};

/**
 * Readings of the repair beside those of the returned unit, check by check, matched by their label, since a later version
 * of a sheet has checks of its own. The latest entry of each counts. Checks that neither side has an entry for are left out.
 * Example: 'Charge voltage' read 5.02 V at the repair and not yet now gives { before: { text: '5.02 V', … }, after: null }.
 */
export function beforeAndAfter(repair: Side, returned: Side): ComparedReading[] {
  const labels = [...new Set([...repair.checks, ...returned.checks].map((check) => check.label))];
  return labels.flatMap((label) => {
    const before = readingOf(repair, label);
    const after = readingOf(returned, label);
    if (before === null && after === null) return [];
    const check = checkOf(returned, label) ?? checkOf(repair, label);
    return [{ label, limits: check ? limitsText(check) : '', before, after }];
  });
}

function checkOf({ checks }: Side, label: string): ComparedCheck | undefined {
  return checks.find((check) => check.label === label);
}

function readingOf(side: Side, label: string): Reading | null {
  const check = checkOf(side, label);
  const entries = side.entries.filter((entry) => entry.checkId === check?.id);
  const latest = entries.reduce<ComparedEntry | null>(
    (last, entry) => (last === null || entry.at.getTime() >= last.at.getTime() ? entry : last),
    null,
  );
  if (!check || !latest) return null;
  return { text: entryText(latest, check.unit), isPassed: latest.isPassed };
}
