import { createHash } from 'node:crypto';
import type { RandomBelow } from '@/lib/numbers/draw';

/**
 * A source of numbers that is the same on every machine, one for each name: the demonstration's job numbers stand in the
 * README. Every story has its own, so that a story more or less changes no number of another.
 */
export function sourceOf(name: string): RandomBelow {
  let drawn = 0;
  return (below) => {
    drawn += 1;
    return wordOf(`${name}#${drawn}`) % below;
  };
}

/** A whole number from `from` to `to`, both included, that looks picked by chance and is fixed by the name. */
export function pick(name: string, from: number, to: number): number {
  return from + (wordOf(name) % (to - from + 1));
}

function wordOf(text: string): number {
  return createHash('sha256').update(`quay-and-alder/${text}`).digest().readUInt32BE(0);
}
