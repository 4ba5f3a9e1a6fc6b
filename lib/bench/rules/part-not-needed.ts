import { WORK_STAGES } from '@/lib/jobs/rules/stage-sets';
import type { Stage } from '@/lib/jobs/rules/stages';
import { type CountedOn, type Pieces, piecesToCome } from './order-list';

/** From the first look at the unit until its repair is proved: before nobody can say, and after nothing is taken any more. */
export const NEEDED_STAGES: readonly Stage[] = [...WORK_STAGES, 'awaiting-approval'];

/** A part that a job is counted on to take, or was until the bench said that it is not needed. */
export type PartToCome = {
  partId: string;
  name: string;
  /** pieces it has not taken yet */
  quantity: number;
  isNeeded: boolean;
};

type Named = Pieces & { name: string };

/**
 * Parts that a job has not taken yet of what its repair usually takes or it waits for, by name. One that was said not to be needed
 * stands among them, so that it can be brought back.
 * Example: usually 2 sockets, 1 taken, and a knob waited for gives the knob and 1 socket.
 */
export function partsToCome(
  job: Omit<CountedOn, 'usual' | 'awaited'> & { usual: readonly Named[]; awaited: readonly Named[] },
): PartToCome[] {
  const names = new Map([...job.usual, ...job.awaited].map(({ partId, name }) => [partId, name]));
  return [...piecesToCome({ ...job, notNeeded: [] })]
    .map(([partId, quantity]) => ({
      partId,
      name: names.get(partId) ?? '',
      quantity,
      isNeeded: !job.notNeeded.includes(partId),
    }))
    .sort((a, b) => a.name.localeCompare(b.name, 'en'));
}

export type NeededFacts = {
  stage: Stage;
  /** the part among those to come; null where it is not one of them */
  part: Pick<PartToCome, 'isNeeded'> | null;
  /** what is said of it now */
  isNeeded: boolean;
};

export type NeededReason = 'wrong-stage' | 'not-to-come' | 'said-already';

/**
 * Whether it may be said of a part of a job that it is not needed, or is after all.
 *
 * maySayIfNeeded({ stage: 'on-bench', part: { isNeeded: true }, isNeeded: false }) -> { allowed: true }
 */
export function maySayIfNeeded({
  stage,
  part,
  isNeeded,
}: NeededFacts): { allowed: true } | { allowed: false; reason: NeededReason } {
  if (!NEEDED_STAGES.includes(stage)) return { allowed: false, reason: 'wrong-stage' };
  if (part === null) return { allowed: false, reason: 'not-to-come' };
  return part.isNeeded === isNeeded ? { allowed: false, reason: 'said-already' } : { allowed: true };
}

/** Why it stays as it is, in the words of the job sheet. */
export const NEEDED_REASONS: Record<NeededReason, string> = {
  'wrong-stage': 'Which parts a job needs is said from the first look at the unit until it is proved.',
  'not-to-come': 'This job neither waits for this part nor usually takes it, or it has taken it.',
  'said-already': 'This was said of the part already.',
};
