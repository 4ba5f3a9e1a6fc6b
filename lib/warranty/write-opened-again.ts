import { type Day, dayFromDate } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { readStage } from '@/lib/jobs/records';
import type { JobEventData } from '@/lib/jobs/rules/events';
import { moveOf } from '@/lib/jobs/rules/stages';
import { writeEvent } from '@/lib/jobs/write-event';
import { PROMISE_WAITS } from '@/lib/promise/rules/after-wait';
import { writePromiseMove } from '@/lib/promise/write-move';
import { writeWatch } from '@/lib/returns/write-watch';
import type { WorkshopCard } from '@/lib/workshop/records';

/** What has to be read of a claim that is opened again. */
export const OPENED_AGAIN = {
  id: true,
  number: true,
  certificateNumber: true,
  job: { select: { id: true, stage: true, promisedOn: true, events: { orderBy: { version: 'asc' } } } },
} as const;

type OpenedAgain = {
  id: string;
  number: string;
  certificateNumber: string;
  job: Parameters<typeof writePromiseMove>[1]['job'] & { stage: string };
};

/**
 * Opens a claim again whose ruling was told, inside the caller's transaction: the ruling is off, the job goes back to assessing, a
 * price that waited for an answer is off, it waits for no part any more, and the days it waited are put on the promise, like those in which the unit was ready.
 *
 * Staff may be moving the same job: the update names the stages it can come from, so a unit that has just been handed to the
 * carrier is not called back. Gives the day the job is promised for now, null where none was; `false` where the claim had no such
 * ruling any more.
 */
export async function writeOpenedAgain(
  tx: Tx,
  o: {
    claim: OpenedAgain;
    move: 'contest' | 'look-again';
    event: Extract<JobEventData, { kind: 'claim-contested' | 'claim-reopened' }>;
    set: { contestedAt: Date; contestText: string } | { reopenedAt: Date };
    /** the version of the job that a member of staff saw */
    jobVersion?: number;
    workshop: WorkshopCard;
    actor: Actor;
    now: Date;
  },
): Promise<{ promisedOn: Day | null } | false> {
  const { claim, actor, now, workshop } = o;
  const { job } = claim;
  await writeEvent(tx, {
    jobId: job.id,
    actor,
    now,
    expected: {
      stages: moveOf(o.move).from,
      ...(o.jobVersion === undefined ? {} : { version: o.jobVersion }),
    },
    // It is no longer ready, and waits for the bench as any other.
    set: { readyAt: null },
    from: readStage(job.stage),
    to: 'assessing',
    event: o.event,
  });
  const { count } = await tx.claim.updateMany({
    where: { id: claim.id, state: 'ruled', ...(o.move === 'contest' ? { contestedAt: null } : {}) },
    data: {
      state: 'open',
      cause: null,
      alsoFound: null,
      ruling: null,
      isLetIn: null,
      secondLookAt: null,
      secondLookBy: null,
      renewedLines: [],
      renewedNamedAt: null,
      renewedNamedBy: null,
      ownerRenewedLines: [],
      ownerRenewedAt: null,
      ...o.set,
    },
  });
  if (count === 0) return false;
  await writeWatch(tx, [claim.certificateNumber]);
  // What it waited for went with the ruling; the order list would count it on, and nothing on the job say why.
  await tx.awaitedPart.deleteMany({ where: { jobId: job.id } });
  // What it does not need was said of the work under that ruling.
  await tx.partNotNeeded.deleteMany({ where: { jobId: job.id } });
  await tx.quoteRevision.updateMany({
    where: { quote: { jobId: job.id }, state: 'sent' },
    data: { state: 'replaced' },
  });
  const waitedAs = PROMISE_WAITS.find((stage) => stage === job.stage);
  const moved =
    waitedAs && (await writePromiseMove(tx, { job, furtherDays: 0, waitedAs, workshop, actor, now }));
  return { promisedOn: moved ? moved.to : job.promisedOn && dayFromDate(job.promisedOn) };
}
