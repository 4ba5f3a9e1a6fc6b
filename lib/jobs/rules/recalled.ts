/**
 * Parts on a job whose lot was recalled, each once; put back, they are no longer on it. What cannot be trusted must not leave the
 * house. No piece of a recalled lot is fitted any more, so every one that a job carries was fitted before.
 * Example: a letter about lot L-2611 while the job carries it gives ['USB-C socket, lot L-2611'].
 */
export function recalledParts(uses: readonly { part: string; lot: string; isRecalled: boolean }[]): string[] {
  return [...new Set(uses.filter((use) => use.isRecalled).map(({ part, lot }) => `${part}, lot ${lot}`))];
}
