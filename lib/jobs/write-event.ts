import type { Tx } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { type Actor, actorId } from './actor';
import { EVENT_DATA, type JobEventData } from './rules/events';
import type { Stage } from './rules/stages';

type JobChange = Parameters<Tx['job']['updateMany']>[0]['data'];

export type EventWrite = {
  jobId: string;
  actor: Actor;
  now: Date;
  event: JobEventData;
  /** The version and stages the caller decided on; absent for additions that cannot clash. */
  expected?: { version?: number; stages?: readonly Stage[] };
  set?: JobChange;
  from?: Stage;
  to?: Stage;
};

/** Also for what is judged before it is written: of a job that is not as it was shown, that comes first. */
export function changedMeanwhile(): Refusal {
  return new Refusal(
    'conflict',
    'This job changed while you were working on it. Nothing of yours was saved yet.',
  );
}

/**
 * Changes a job and writes its event in one go.
 *
 * Two people may change the same job at once. The row itself decides: the update names the version and stage it
 * comes from, and the one whose update finds no row loses with a conflict. Additions name no version; the raised
 * version still puts them in order.
 */
export async function writeEvent(tx: Tx, write: EventWrite): Promise<number> {
  const [changed] = await tx.job.updateManyAndReturn({
    where: {
      id: write.jobId,
      ...(write.expected?.version === undefined ? {} : { version: write.expected.version }),
      ...(write.expected?.stages === undefined ? {} : { stage: { in: [...write.expected.stages] } }),
    },
    data: { ...write.set, ...(write.to === undefined ? {} : { stage: write.to }), version: { increment: 1 } },
    select: { version: true },
  });
  if (!changed) throw changedMeanwhile();
  const { version } = changed;
  await tx.jobEvent.create({
    data: {
      jobId: write.jobId,
      version,
      kind: write.event.kind,
      at: write.now,
      actorKind: write.actor.kind,
      actorId: actorId(write.actor),
      fromStage: write.from ?? null,
      toStage: write.to ?? null,
      data: EVENT_DATA[write.event.kind].parse(write.event.data),
    },
    select: { id: true },
  });
  return version;
}
