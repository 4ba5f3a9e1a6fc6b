import type { JobRecord } from '@/lib/jobs/records';
import { openOf } from '@/lib/jobs/stored-awaited-parts';
import { usualPieces } from './rules/order-list';
import { type PartToCome, partsToCome } from './rules/part-not-needed';

/** Parts that a job has not taken yet of what its repairs usually take or it waits for; of a claim, of what it waits for alone. */
export function partsToComeOf(job: JobRecord): PartToCome[] {
  const since = job.events.findLast(({ kind }) => kind === 'parts-awaited');
  const taking = { partUses: job.partUses, events: since ? [since] : [] };
  return partsToCome({
    usual: job.kind === 'repair' ? usualOf(job) : [],
    awaited: job.awaitedParts.flatMap(({ partId, name, quantity }) =>
      partId === null ? [] : [{ partId, name, quantity: openOf({ partId, quantity }, taking) }],
    ),
    taken: takenOf(job),
    notNeeded: notNeededOf(job),
  });
}

/**
 * What a job's repairs usually take, it has not taken yet and finds too little of in stock, by name, but for what it does not need:
 * what it may have to wait for. `stock` has every part.
 */
export function partsShort(
  job: JobRecord,
  stock: readonly { id: string; inStock: number }[],
): { partId: string; name: string; quantity: number }[] {
  const here = new Map(stock.map(({ id, inStock }) => [id, inStock]));
  return partsToCome({
    usual: usualOf(job),
    awaited: [],
    taken: takenOf(job),
    notNeeded: notNeededOf(job),
  })
    .filter(({ partId, quantity, isNeeded }) => isNeeded && quantity > (here.get(partId) ?? 0))
    .map(({ partId, name, quantity }) => ({ partId, name, quantity }));
}

function usualOf(job: JobRecord) {
  return usualPieces(job).map(({ part, ...usual }) => ({ ...usual, name: part.name }));
}

function takenOf({ partUses }: JobRecord) {
  return partUses.map(({ quantity, lot }) => ({ partId: lot.partId, quantity }));
}

function notNeededOf({ partsNotNeeded }: JobRecord) {
  return partsNotNeeded.map(({ partId }) => partId);
}
