// biome-ignore lint/style/noRestrictedImports: carries who draws along a call, and tells nothing of the outside world
import { AsyncLocalStorage } from 'node:async_hooks';
import { randomInt } from 'node:crypto';
import { drawNumber, type NumberKind } from './job-number';

/** Whole numbers from 0 up to, not including, the one asked for. */
export type RandomBelow = (below: number) => number;

const given = new AsyncLocalStorage<RandomBelow>();

/** A new number from the system's cryptographic source, or from the one given by withRandomSource. */
export function newNumber(kind: NumberKind): string {
  const randomBelow = given.getStore() ?? ((below) => randomInt(below));
  return drawNumber(kind, randomBelow);
}

/**
 * Lets everything that `work` starts and awaits draw its numbers from a source of the caller's, so that a
 * demonstration or a test gets the same ones each time. A number that a source repeats opens a job's public status to
 * whoever knows the source: never for a real workshop's jobs.
 */
export function withRandomSource<T>(randomBelow: RandomBelow, work: () => Promise<T>): Promise<T> {
  return given.run(randomBelow, work);
}
