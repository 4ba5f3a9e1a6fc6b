import { randomInt } from 'node:crypto';
import { drawNumber, type NumberKind } from './job-number';

/** A new number from the system's cryptographic source. */
export function newNumber(kind: NumberKind): string {
  return drawNumber(kind, (below) => randomInt(below));
}
