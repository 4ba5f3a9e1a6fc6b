/** More lines than this no price has. */
export const MOST_LINES = 40;

/** Places for lines that the form of a price begins with. */
const FIRST = 6;
/** Places that are empty beside the lines it starts from. */
const SPARE = 2;

/** How many places for lines a form draws, so that none of those it starts from is left out. */
export function linePlaces(known: readonly unknown[]): number {
  return Math.min(MOST_LINES, Math.max(FIRST, known.length + SPARE));
}
