import type { PinTable } from './pin-table';
import { findPinTable } from './pin-tables/all';
import { judgeProbes, type KeptProbe } from './probes';

/*
 * Words of this room.
 * check sheet: what must be proved before a unit may go back; it belongs to a repair and has versions. check: one line of it.
 * entry: one result of one check on one job; a redo adds an entry, earlier ones stay. reading: the number an entry holds.
 * limits: lowest and highest reading that pass, both inclusive; one of them may be absent.
 * connector sheet: a check whose entry is what every probe of a pin table read.
 * proved: every check of the sheet has passed, going by its latest entry.
 */

export const CHECK_KINDS = ['tick', 'reading', 'choice', 'connector'] as const;
export type CheckKind = (typeof CHECK_KINDS)[number];

/** What of a check decides whether an entry passes; rows of the database fit it. */
export type CheckLimits = {
  kind: string;
  low: number | null;
  high: number | null;
  choices: readonly string[];
  passing: readonly string[];
  /** of a connector sheet: key of a shipped pin table, or id of one of the workshop's own */
  pinTable?: string | null | undefined;
};

/** What the bench gives for one check: the field of its kind is read, the others are not. */
export type GivenEntry = {
  tick?: boolean;
  reading?: number | null;
  /** the meter read over its range, and `reading` is where that range ends */
  isOverRange?: boolean;
  choice?: string | null;
  /** what each probe of a connector read, by the probe's key */
  probes?: ReadonlyMap<string, string>;
};

export type EntryProblem =
  | 'no-reading'
  | 'range-too-short'
  | 'no-choice'
  | 'unknown-choice'
  | 'no-pin-table'
  | 'missing-probes'
  | 'unknown-kind';

export type EntryAnswer =
  | {
      ok: true;
      isPassed: boolean;
      reading: number | null;
      /** given where it is so */
      isOverRange?: true;
      choice: string | null;
      /** of a connector sheet only */
      probes?: KeptProbe[];
    }
  | { ok: false; problem: EntryProblem; missing?: string[] };

/**
 * Whether one entry passes its check, and what of it is kept.
 * A tick passes when ticked; a reading inside its limits, both inclusive; a choice when it is one of the passing ones; a connector
 * when every required probe of its pin table reads right. A reading over the meter's range is at least where the range ends, which
 * passes a minimum at or below that end: an insulation test often reads so (common practice, no source). A table of the workshop's own is handed in; the shipped ones are known.
 * Refuses by value: a reading that is no finite number, an end of a range that leaves open whether it passes, a choice that is not on the check, a probe without an answer, a pin table
 * or a kind that is not known.
 * Example: reading 5.25 with limits 4.75 to 5.25 gives { ok: true, isPassed: true, reading: 5.25, choice: null }.
 */
export function evaluateEntry(
  check: CheckLimits,
  given: GivenEntry,
  ownTable: PinTable | null = null,
): EntryAnswer {
  switch (check.kind) {
    case 'tick':
      return { ok: true, isPassed: given.tick === true, reading: null, choice: null };
    case 'reading': {
      const { reading } = given;
      if (typeof reading !== 'number' || !Number.isFinite(reading))
        return { ok: false, problem: 'no-reading' };
      if (given.isOverRange) return evaluateOverRange(reading, check);
      return { ok: true, isPassed: isInside(reading, check), reading, choice: null };
    }
    case 'choice': {
      if (!given.choice) return { ok: false, problem: 'no-choice' };
      if (!check.choices.includes(given.choice)) return { ok: false, problem: 'unknown-choice' };
      return {
        ok: true,
        isPassed: check.passing.includes(given.choice),
        reading: null,
        choice: given.choice,
      };
    }
    case 'connector':
      return evaluateProbes(ownTable ?? findPinTable(check.pinTable ?? ''), given.probes ?? new Map());
    default:
      return { ok: false, problem: 'unknown-kind' };
  }
}

// All that is known is that it reads more than the end of the range.
function evaluateOverRange(end: number, { low, high }: CheckLimits): EntryAnswer {
  const answer = { ok: true, reading: end, isOverRange: true, choice: null } as const;
  if (high !== null)
    return end >= high ? { ...answer, isPassed: false } : { ok: false, problem: 'range-too-short' };
  return low === null || end >= low
    ? { ...answer, isPassed: true }
    : { ok: false, problem: 'range-too-short' };
}

function evaluateProbes(table: PinTable | null, given: ReadonlyMap<string, string>): EntryAnswer {
  if (!table) return { ok: false, problem: 'no-pin-table' };
  const answer = judgeProbes(table, given);
  if (!answer.ok) return { ok: false, problem: 'missing-probes', missing: answer.missing };
  return { ok: true, isPassed: answer.isPassed, reading: null, choice: null, probes: answer.probes };
}

function isInside(reading: number, { low, high }: CheckLimits): boolean {
  return (low === null || reading >= low) && (high === null || reading <= high);
}

/**
 * Reads a number typed at the bench: '4.98', '4,98', ' -12 ' and '.5' work, anything else is null.
 * A comma is a decimal mark: nobody types thousands of ohms with a group mark on a keypad (practice).
 */
export function readReading(text: string): number | null {
  const plain = text.trim().replace(/[−–]/g, '-').replace(',', '.');
  if (!/^-?(?:\d+\.?\d*|\.\d+)$/.test(plain)) return null;
  const value = Number(plain);
  return Number.isFinite(value) ? value : null;
}

/**
 * Reads what a meter showed as it is typed at the bench: a number, or '>200' where it read over a range that ends at 200; null for
 * anything else.
 */
export function readMeter(text: string): { reading: number; isOverRange: boolean } | null {
  const isOverRange = text.trim().startsWith('>');
  const reading = readReading(isOverRange ? text.trim().slice(1) : text);
  return reading === null ? null : { reading, isOverRange };
}

/** Whether a check sets only a minimum, so that a reading over the range may pass it. */
export function isMinimum(check: Pick<CheckLimits, 'kind' | 'low' | 'high'>): boolean {
  return check.kind === 'reading' && check.low !== null && check.high === null;
}

/** What passes, in words: '4.75 to 5.25 V', 'at most 0.3 Ω', 'pass: clean', 'every pin and pair'; empty for a tick. */
export function limitsText(check: CheckLimits & { unit: string | null }): string {
  const unit = check.unit ? ` ${check.unit}` : '';
  if (check.kind === 'choice') return `pass: ${check.passing.join(' or ')}`;
  if (check.kind === 'connector') return 'every pin and pair';
  if (check.kind !== 'reading') return '';
  if (check.low !== null && check.high !== null) return `${check.low} to ${check.high}${unit}`;
  if (check.high !== null) return `at most ${check.high}${unit}`;
  return check.low === null ? '' : `at least ${check.low}${unit}`;
}

export type RecordedEntry = { checkId: string; isPassed: boolean; at: Date };

export type CheckState<C extends { id: string } = { id: string }> = {
  passed: C[];
  failed: C[];
  missing: C[];
  isProved: boolean;
};

/**
 * Where a job stands on its sheet. The latest entry of each check decides, the later one in the list when two have the same
 * instant; entries of other sheets, and those from before `since` of their check, are not looked at: what a unit measured before it
 * was opened again says nothing of it now. A sheet without checks proves nothing.
 * Example: one check failed at noon and passed at one o'clock is passed; both entries stay.
 */
export function provingState<C extends { id: string }>(
  checks: readonly C[],
  entries: readonly RecordedEntry[],
  since: (check: C) => Date | null = () => null,
): CheckState<C> {
  const from = new Map(
    checks.map((check) => [check.id, since(check)?.getTime() ?? Number.NEGATIVE_INFINITY]),
  );
  const latest = new Map<string, RecordedEntry>();
  for (const entry of entries) {
    if (entry.at.getTime() < (from.get(entry.checkId) ?? 0)) continue;
    const seen = latest.get(entry.checkId);
    if (!seen || entry.at.getTime() >= seen.at.getTime()) latest.set(entry.checkId, entry);
  }
  const passed = checks.filter((check) => latest.get(check.id)?.isPassed === true);
  const failed = checks.filter((check) => latest.get(check.id)?.isPassed === false);
  const missing = checks.filter((check) => !latest.has(check.id));
  return { passed, failed, missing, isProved: checks.length > 0 && passed.length === checks.length };
}
