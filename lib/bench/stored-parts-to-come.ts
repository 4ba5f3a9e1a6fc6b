import type { JobRecord } from '@/lib/jobs/records';
import { openOf } from '@/lib/jobs/stored-awaited-parts';
import { type PartToCome, partsToCome } from './rules/part-not-needed';

/** Parts that a job has not taken yet of what its repair usually takes or it waits for; of a claim, of what it waits for alone. */
export function partsToComeOf(job: JobRecord): PartToCome[] {
  const since = job.events.findLast(({ kind }) => kind === 'parts-awaited');
  const taking = { partUses: job.partUses, events: since ? [since] : [] };
  return partsToCome({
    usual:
      job.kind === 'repair'
        ? job.repair.usualParts.map(({ part, ...usual }) => ({ ...usual, name: part.name }))
        : [],
    awaited: job.awaitedParts.flatMap(({ partId, name, quantity }) =>
      partId === null ? [] : [{ partId, name, quantity: openOf({ partId, quantity }, taking) }],
    ),
    taken: job.partUses.map(({ quantity, lot }) => ({ partId: lot.partId, quantity })),
    notNeeded: job.partsNotNeeded.map(({ partId }) => partId),
  });
}
