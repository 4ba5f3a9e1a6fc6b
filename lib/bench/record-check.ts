import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { writeEvent } from '@/lib/jobs/write-event';
import { idOfSent } from '@/lib/jobs/write-once';
import { Refusal } from '@/lib/outcome';
import { readTable } from './pin-table-records';
import { type EntryProblem, evaluateEntry, type GivenEntry } from './rules/checks';

const PROBLEMS: Record<EntryProblem, { sentence: string; field?: string }> = {
  'no-reading': {
    sentence:
      'Enter the reading as a number, for instance 4.98. Where the meter read over its range, enter where the range ends after a >, for instance >200.',
    field: 'reading',
  },
  'range-too-short': {
    sentence: 'Over this range it may pass or fail. Measure it on a longer one.',
    field: 'reading',
  },
  'no-choice': { sentence: 'Choose one of the answers.', field: 'choice' },
  'unknown-choice': { sentence: 'Choose one of the answers on the sheet.', field: 'choice' },
  'no-pin-table': {
    sentence:
      'The pin table of this check cannot be read. The owner can take it off the repair’s sheet, add it again, and put this job on the new version.',
  },
  'missing-probes': { sentence: 'Give an answer to every probe.', field: 'probes' },
  'unknown-kind': { sentence: 'This kind of check is not known here.' },
};

export type CheckResult = {
  checkId: string;
  given: GivenEntry;
  note: string;
  /** Of the form, so that a second press adds nothing. */
  entryId?: string | undefined;
};

type Frame = ByStaff & { jobId: string };

/** Adds one result of one check. A redo adds another; the failed one stays on the sheet. */
export async function recordCheck(o: Frame & CheckResult): Promise<{ isPassed: boolean }> {
  const [isPassed] = await recordChecks({ ...o, results: [o] });
  return { isPassed: isPassed === true };
}

/**
 * Adds results of several checks at once, or none of them; says in order which passed. A refusal names the field of the check it is
 * about as 'reading-<check>' where `hasManyFields`, as 'reading' otherwise. What was sent before is not entered again, and answered as
 * it was then: a page that lost its answer brings along what it had entered.
 */
export async function recordChecks(
  o: Frame & { results: readonly CheckResult[]; hasManyFields?: boolean },
): Promise<boolean[]> {
  const write = () =>
    transaction(async (tx) => {
      const passed: boolean[] = [];
      for (const result of o.results) {
        const fieldOf = (name: string) => (o.hasManyFields ? `${name}-${result.checkId}` : name);
        passed.push(await writeEntry(tx, o, result, fieldOf));
      }
      return passed;
    });
  try {
    return await write();
  } catch (error) {
    if (!isUniqueViolation(error, 'check_entry_pkey')) throw error;
    // Of two presses at once: now the first one's entries are found.
    return write();
  }
}

async function writeEntry(
  tx: Tx,
  { jobId, actor, now }: Frame,
  { checkId, given, note, entryId }: CheckResult,
  fieldOf: (name: string) => string,
): Promise<boolean> {
  const sent = idOfSent(entryId, [jobId, checkId, given, note]);
  const before = sent.id ? await tx.checkEntry.findUnique({ where: { id: sent.id } }) : null;
  if (before) return before.isPassed;
  const check = await tx.check.findFirst({
    where: {
      id: checkId,
      sheet: { OR: [{ jobs: { some: { id: jobId } } }, { besides: { some: { jobId } } }] },
    },
  });
  if (!check) throw new Refusal('not-found', 'This check is not on the job’s sheet.');
  // A form sent before anything was chosen is no failed check.
  if (check.kind === 'tick' && given.tick === undefined) {
    throw new Refusal('invalid', 'Choose whether it holds.', fieldOf('tick'));
  }
  const answer = evaluateEntry(check, given, await readTable(check.pinTable, tx));
  if (!answer.ok) {
    const { sentence, field } = PROBLEMS[answer.problem];
    throw new Refusal(
      'invalid',
      answer.missing ? `${sentence} ${missingText(answer.missing)}` : sentence,
      field && fieldOf(field),
    );
  }
  const { isPassed, reading, isOverRange = false, choice, probes } = answer;
  const entry = await tx.checkEntry.create({
    data: {
      ...sent,
      jobId,
      checkId: check.id,
      isPassed,
      reading,
      isOverRange,
      choice,
      ...(probes === undefined ? {} : { probes }),
      note,
      at: now,
      userId: actor.id,
    },
    select: { id: true },
  });
  await writeEvent(tx, {
    jobId,
    actor,
    now,
    expected: { stages: ['proving'] },
    event: { kind: 'check-recorded', data: { entryId: entry.id, check: check.label, isPassed } },
  });
  return isPassed;
}

const MOST_NAMED = 8;

function missingText(missing: readonly string[]): string {
  const named = missing.slice(0, MOST_NAMED).join(', ');
  const more = missing.length - MOST_NAMED;
  return `Still without one: ${named}${more > 0 ? ` and ${more} more` : ''}.`;
}
