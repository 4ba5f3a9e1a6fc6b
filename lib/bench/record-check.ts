import { transaction } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { writeEvent } from '@/lib/jobs/write-event';
import { Refusal } from '@/lib/outcome';
import { type EntryProblem, evaluateEntry, type GivenEntry } from './rules/checks';

const PROBLEMS: Record<EntryProblem, { sentence: string; field?: string }> = {
  'no-reading': { sentence: 'Enter the reading as a number, for instance 4.98.', field: 'reading' },
  'no-choice': { sentence: 'Choose one of the answers.', field: 'choice' },
  'unknown-choice': { sentence: 'Choose one of the answers on the sheet.', field: 'choice' },
  'unknown-kind': { sentence: 'This kind of check is not known here.' },
};

/** Adds one result of one check. A redo adds another; the failed one stays on the sheet. */
export async function recordCheck(o: {
  jobId: string;
  checkId: string;
  given: GivenEntry;
  note: string;
  actor: Extract<Actor, { id: string }>;
  now: Date;
}): Promise<{ isPassed: boolean }> {
  return transaction(async (tx) => {
    const check = await tx.check.findFirst({
      where: { id: o.checkId, sheet: { jobs: { some: { id: o.jobId } } } },
    });
    if (!check) throw new Refusal('not-found', 'This check is not on the job’s sheet.');
    // A form sent before anything was chosen is no failed check.
    if (check.kind === 'tick' && o.given.tick === undefined) {
      throw new Refusal('invalid', 'Choose whether it holds.', 'tick');
    }
    const answer = evaluateEntry(check, o.given);
    if (!answer.ok) {
      const { sentence, field } = PROBLEMS[answer.problem];
      throw new Refusal('invalid', sentence, field);
    }
    const entry = await tx.checkEntry.create({
      data: {
        jobId: o.jobId,
        checkId: check.id,
        isPassed: answer.isPassed,
        reading: answer.reading,
        choice: answer.choice,
        note: o.note,
        at: o.now,
        userId: o.actor.id,
      },
      select: { id: true },
    });
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { stages: ['proving'] },
      event: {
        kind: 'check-recorded',
        data: { entryId: entry.id, check: check.label, isPassed: answer.isPassed },
      },
    });
    return { isPassed: answer.isPassed };
  });
}
