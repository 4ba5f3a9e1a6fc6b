import { transaction } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { writeEvent } from '@/lib/jobs/write-event';
import { Refusal } from '@/lib/outcome';
import { type EntryProblem, evaluateEntry, type GivenEntry } from './rules/checks';

const PROBLEM_SENTENCES: Record<EntryProblem, string> = {
  'no-reading': 'Enter the reading as a number, for instance 4.98.',
  'no-choice': 'Choose one of the answers.',
  'unknown-choice': 'Choose one of the answers on the sheet.',
  'unknown-kind': 'This kind of check is not known here.',
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
    const answer = evaluateEntry(check, o.given);
    if (!answer.ok) throw new Refusal('invalid', PROBLEM_SENTENCES[answer.problem], `check-${check.id}`);
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
