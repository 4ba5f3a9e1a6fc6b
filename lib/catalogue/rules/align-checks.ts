/** Which check of a sheet became which, by their indices. */
export type AlignedChecks = {
  /** For each check of then the one it was; null for a new one. */
  from: (number | null)[];
  /** Of those that stay, the ones whose order among each other changed, as indices of then. */
  moved: ReadonlySet<number>;
  /** Indices of now that are there no more. */
  off: number[];
};

type Labelled = { label: string };

/**
 * Finds the checks of a sheet again in its next version: those of the same label in their order, then what is left over at the
 * same place, as a check under a new label. For showing what changes; what is written is the next version as a whole.
 * Example: ['Charges', 'Plays'] and ['Rinsed', 'Charges', 'Plays'] give from [null, 0, 1], nothing moved and nothing off.
 */
export function alignChecks(now: readonly Labelled[], then: readonly Labelled[]): AlignedChecks {
  const free = new Map<string, number[]>();
  now.forEach(({ label }, i) => {
    free.set(label, [...(free.get(label) ?? []), i]);
  });
  const from = then.map(({ label }) => free.get(label)?.shift() ?? null);
  const left = new Set([...free.values()].flat());
  const found = from.map((at, i) => {
    if (at !== null || !left.has(i)) return at;
    left.delete(i);
    return i;
  });
  const stayed = found.flatMap((at, i) => (at === null ? [] : [{ at, i }]));
  const order = stayed.map(({ at }) => at).sort((a, b) => a - b);
  const moved = stayed.filter(({ at }, rank) => order[rank] !== at).map(({ i }) => i);
  return { from: found, moved: new Set(moved), off: [...left].sort((a, b) => a - b) };
}
